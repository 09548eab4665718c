// The keys of the answer `fit`.
#include "sheet/fit_json.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "fit/rooms_by_hand.h"

using namespace nook;
using namespace nook::by_hand;

namespace {

Design design() {
  Design d = empty_design(18);
  d.parts.push_back(panel("panel", {500, 1500}, {900, 0, 0}, kY, kZ));
  Contact c = meet("panel", EdgeSide::left, "left wall", Fitting::scribe);
  c.notch = true;
  d.contacts.push_back(c);
  d.contacts.push_back(meet("panel", EdgeSide::bottom, "floor"));
  d.parts.push_back(panel("ledger", {800, 90}, {860, 0, 900}, {-1, 0, 0}, kZ));
  d.contacts.push_back(meet("ledger", PieceFace::back, "left wall", Fitting::shim));
  d.contacts.push_back(meet("ledger", EdgeSide::top, "left wall"));
  d.contacts[3].place = {12, 3, 4};
  return d;
}

Json answer() {
  Found c = corner(90);
  add_board(c.survey.walls[0], 133, 14);
  const Design d = design();
  return fit_json(fit_exactly(c, d), "a job");
}

void has(const Json& json, std::vector<std::string> keys) {
  for (const std::string& key : keys) {
    INFO(key);
    CHECK(json.contains(key));
  }
}

}  // namespace

TEST_CASE("fit JSON: every key stands, also where a list is empty") {
  const Json json = answer();
  has(json, {"nookfit", "answer", "job", "verdict", "diagnostics", "groups", "clashes", "contacts",
             "notches", "clearances", "covered", "shows", "floor"});
  CHECK(json["answer"] == "fit");
  has(json["groups"][0], {"name", "x_mm", "y_mm", "z_mm", "turn_deg", "touches"});
  has(json["contacts"][0], {"part", "edge", "meets", "by", "gap_least_mm", "gap_most_mm", "sd_mm",
                            "chance", "taper_deg", "scribe_mm", "wood_mm", "line_mm", "lines",
                            "field_mm", "square_mm", "past_mm", "after", "verdict"});
  has(json["contacts"][0]["lines"], {"front", "back"});
  has(json["contacts"][0]["after"], {"gap_least_mm", "gap_most_mm"});
  has(json["notches"][0], {"part", "for", "polygon_mm"});
  has(json["floor"][0], {"part", "shim_mm", "squash_mm"});
}

TEST_CASE("fit JSON: lines are [at, gap, sd], fields [u, v, gap, sd], polygons [u, v]") {
  const Json json = answer();
  CHECK(json["contacts"][0]["by"] == "scribe");
  CHECK(json["contacts"][0]["line_mm"][0].size() == 3);
  CHECK(json["contacts"][2]["field_mm"][0].size() == 4);
  CHECK(json["notches"][0]["polygon_mm"].size() == 4);
  CHECK(json["notches"][0]["polygon_mm"][0].size() == 2);
}

TEST_CASE("fit JSON: an edge that cannot meet is told with its place") {
  const Json json = answer();
  REQUIRE(json["diagnostics"].size() == 1);
  CHECK(json["diagnostics"][0]["code"] == "edge-cannot-meet");
  CHECK(json["diagnostics"][0]["file"] == "a job/design.toml");
  CHECK(json["diagnostics"][0]["line"] == 12);
  CHECK(json["contacts"][3]["gap_most_mm"].is_null());
  CHECK(json["verdict"] == "does not fit");
}

TEST_CASE("fit JSON: without readings every figure is null") {
  const Found c = corner(90);
  const Design d = design();
  const std::vector<RoomShape> none;
  const Json json = fit_json(fit({c.survey, d, c.room, none, 0.95, false}), "a job");
  CHECK(json["verdict"] == "cannot tell");
  CHECK(json["contacts"][0]["gap_most_mm"].is_null());
  CHECK(json["contacts"][0]["verdict"] == "cannot tell");
}
