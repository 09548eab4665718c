// What every answer shares: how it opens, how its numbers are printed.
#pragma once

#include <string>

#include "base/diagnostic.h"
#include "base/notation.h"
#include "base/verdict.h"

namespace nook {

/// How an answer is to be written; from the command line.
struct Style {
  Rounding rounding;
  double sure = 0.95;
  bool color = false;      // never carries meaning alone
  bool quiet = false;
  bool verbose = false;
};

}  // namespace nook
