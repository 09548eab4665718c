// What is wrong with a piece as cut, told apart by how it comes about in the shop.
#pragma once

#include <vector>

#include "shop/judged.h"
#include "shop/verify.h"

namespace nook {

/// The faults of one piece by itself, worst first; empty where it is surely right.
std::vector<CutFault> faults_of(const Judged& judged, double sure);

}  // namespace nook
