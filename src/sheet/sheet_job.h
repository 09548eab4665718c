// A job's answers, ready to be made into sheets.
#pragma once

#include <string>

#include "safety/safety.h"
#include "sheet/answer.h"
#include "sheet/foretold.h"
#include "sheet/scene.h"
#include "shop/carry.h"
#include "shop/cut.h"

namespace nook {

/// Everything a sheet is made from. `scene` holds the fit and the drilling map.
struct SheetJob {
  std::string title;  // of the design
  JobScene scene;
  const CutAnswer* cut = nullptr;
  const CarryAnswer* carry = nullptr;
  const SafetyAnswer* safety = nullptr;
  std::vector<NextReading> to_take;  // readings still to be taken, in walking order or best first
  std::vector<bool> twice;           // which of them nothing else checks; empty = none known
  double minutes = 0;                // that they take; 0 = not told
  Foretold proof;                    // the tape that has to come out right before cutting
  Style style;

  const FitAnswer& fit() const { return *scene.fit; }
  const DrillAnswer& drill() const { return *scene.drill; }
  /// `41 3/8"`.
  std::string said(double mm) const { return with_unit(millimetres(mm), style.rounding); }
  /// `41 3/8`.
  std::string bare(double mm) const { return written(millimetres(mm), style.rounding); }
  /// `, give or take 1/16"`; empty where it is known exactly.
  std::string about(double sd) const;
};

}  // namespace nook
