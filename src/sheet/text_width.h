// How wide a line of words prints, known without a font at hand.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace nook {

/// Of the em, above and below the middle of the capitals (0.729 em high in DejaVu Sans): capitals
/// and ascenders reach 0.40 up, descenders 0.60 down.
inline constexpr double kTextAbove = 0.40;
inline constexpr double kTextBelow = 0.60;
inline constexpr double kCapHeight = 0.729;

/// Width of one line in the unit of `size`. Advance widths of DejaVu Sans 2.37, which is among the
/// widest faces: what fits in it fits in those a phone puts in its place. Characters outside
/// Latin-1 and a few signs count as one em.
double width_of(std::string_view words, double size, bool bold = false);

/// Words broken at spaces into lines no wider than `width`; a longer word is broken anywhere.
std::vector<std::string> lines_within(std::string_view words, double size, double width,
                                      bool bold = false);

}  // namespace nook
