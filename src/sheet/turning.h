// Pictures of the way in where it is tight: round a turn of the hall, up under the ceiling.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "sheet/draft.h"
#include "sheet/scene.h"
#include "shop/carry.h"

namespace nook {

/// A pass with less spare room than this is worth a picture, mm. Chosen.
inline constexpr double kTight = 50;

/// A hall of width `from` that turns into one of width `to`, with a piece `length` by `width` in
/// plan where it is tightest.
struct TurnPicture {
  std::string title, words;
  double from = 0, to = 0;
  double length = 0, width = 0;
};
Drawing drawn(const TurnPicture& turn, const Canvas& canvas, const Rounding& rounding);

/// A piece `high` by `thick` raised about its foot under a ceiling, where it is highest.
struct TipPicture {
  std::string title, words;
  double high = 0, thick = 0, ceiling = 0;
};
Drawing drawn(const TipPicture& tip, const Canvas& canvas, const Rounding& rounding);

/// The angle at which the piece is nearest to the inner corner of the turn, and by how much it
/// clears it there (negative: it does not pass).
struct TightSpot {
  double angle_deg = 0, clear = 0;
};
TightSpot tightest(const TurnPicture& turn);

/// One picture for each tight or failing turn and tipping-up of the way in.
struct WayPicture {
  std::string part;
  std::function<Drawing(const Canvas&)> draw;
};
std::vector<WayPicture> tight_passes(const JobScene& scene, const CarryAnswer& carry);

}  // namespace nook
