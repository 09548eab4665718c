// What is wrong with a piece as cut, told apart by how it comes about in the shop.
#pragma once

#include <string>
#include <vector>

#include "shop/judged.h"
#include "shop/verify.h"

namespace nook {

/// "the third width"; from the fifth on "the last width".
std::string in_order(std::size_t index, const std::string& what);

/// The faults of one piece by itself, worst first; empty where it is surely right.
std::vector<CutFault> faults_of(const Judged& judged, double sure);

}  // namespace nook
