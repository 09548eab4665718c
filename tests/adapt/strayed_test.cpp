// A ladder that would go in somewhere else altogether once it is moved far along the deck's edge.
#include <catch2/catch.hpp>
#include <string>

#include "adapt/trial.h"
#include "fit/fit.h"
#include "job/job.h"
#include "varied_room.h"

using namespace nook;
using namespace nook::test;

namespace {

constexpr double in = kMillimetresPerInch;

// The lookout with its ladder drawn that much further from the right wall.
Design lookout_with_ladder(double by_mm) {
  Design design = *parse_design(source_file("rooms/lookout/design.toml"), "design.toml");
  for (Part& part : design.parts)
    if (part.group == "ladder") part.place_in_room.at.x += by_mm;
  return design;
}

FitAnswer fitted(const MeasuredRoom& room, const Design& design) {
  return fit({room.survey, design, room.room, room.draws, 0.95, true});
}

}  // namespace

TEST_CASE("adapt: a ladder that slides along to where nothing was drawn has strayed") {
  const MeasuredRoom room = varied_room("lookout", 91, 0);
  const Design drawn = lookout_with_ladder(0), little = lookout_with_ladder(in / 2),
               far = lookout_with_ladder(2.8125 * in);
  const FitAnswer before = fitted(room, drawn), after = fitted(room, far);
  CHECK(strayed(before, fitted(room, little)) == nullptr);
  const Piece* piece = strayed(before, after);
  REQUIRE(piece != nullptr);
  CHECK(piece->drawn->group == "ladder");
}

TEST_CASE("fit: a gap that is too wide in the adjusted room is not told to fit") {
  const MeasuredRoom room = varied_room("lookout", 91, 100);
  const Design design = lookout_with_ladder(2.6875 * in);
  const FitAnswer answer = fitted(room, design);
  int wide = 0;
  for (const ContactFit& c : answer.contacts) {
    if (c.how->by != Fitting::butt || c.gap.most <= c.allow) continue;
    INFO(c.part << " at the " << c.meets << ", gap " << c.gap.most << " mm, chance " << c.chance);
    CHECK(c.verdict != Verdict::fits);
    ++wide;
  }
  CHECK(wide > 0);
}
