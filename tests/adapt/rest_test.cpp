// The sample ladder where the nosing that it goes against is too short for both its uprights.
#include <algorithm>
#include <catch2/catch.hpp>

#include "adapt/flaw.h"
#include "fit/fit.h"
#include "job/job.h"
#include "varied_room.h"

using namespace nook;
using namespace nook::test;

namespace {

// The lookout in its own room with the nosing `length` long.
struct Lookout {
  MeasuredRoom room = varied_room("lookout", 0, 4);
  Design design;
  FitAnswer answer;

  explicit Lookout(const std::string& length) {
    const std::string drawn = "shape = { length = '17 7/8' }";
    std::string text = source_file("rooms/lookout/design.toml");
    const auto at = text.find(drawn);
    REQUIRE(at != std::string::npos);
    text.replace(at, drawn.size(), "shape = { length = '" + length + "' }");
    design = *parse_design(text, "design.toml");
    answer = fit({room.survey, design, room.room, room.draws, 0.95, true});
  }

  double ladder_still_moves() const {
    const auto found = std::find_if(answer.groups.begin(), answer.groups.end(),
                                    [](const GroupFit& group) { return group.name == "ladder"; });
    REQUIRE(found != answer.groups.end());
    return found->still_moves_mm;
  }
  std::vector<Flaw> findings() const { return findings_of(answer, usual_rounding(Unit::inch)); }
};

constexpr const char* kRest = "rest|ladder||0";

}  // namespace

TEST_CASE("fit: a ladder with one upright on its nosing slides on, and it is said") {
  const Lookout lookout("12");
  CHECK(lookout.ladder_still_moves() > 0.4);
  CHECK(lookout.answer.verdict != Verdict::fits);
  const auto findings = lookout.findings();
  const Flaw* rest = flaw_named(findings, kRest);
  REQUIRE(rest);
  CHECK(rest->verdict == Verdict::cannot_tell);
  CHECK(rest->text == "ladder: where it comes to rest cannot be told, it slides on by 1/16\"");
}

TEST_CASE("fit: a ladder with both uprights on its nosing comes to rest") {
  const Lookout lookout("17 7/8");
  CHECK(lookout.ladder_still_moves() == 0);
  CHECK_FALSE(flaw_named(lookout.findings(), kRest));
}
