// The cutting list in the words of the trade.
#pragma once

#include <string>
#include <vector>

#include "sheet/answer.h"
#include "shop/cut.h"

namespace nook {

/// A size that may not come out larger, or smaller, than it is: rounded to the safe side.
std::string rounded_down(double mm, Rounding rounding);
std::string rounded_up(double mm, Rounding rounding);

/// What comes off an edge: "3/4"", or "nothing" where it is less than half a mark.
std::string taken(double mm, Rounding rounding);

/// One line of the shopping list: `24 #10 wood screw x 3"`.
std::string purchase_words(const Purchase& item, Rounding rounding);

/// The page that `nookfit cut` prints: the list by stock, each piece, boards and sheets, what to
/// buy. 80 columns. Notches and blanks are rounded up; a size with a clearance beside it is rounded
/// down.
std::string cut_text(const CutAnswer& cut, const Style& style);

}  // namespace nook
