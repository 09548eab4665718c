// Findings in order and as text, the opening of JSON answers, wrapping, foretold tapes.
#include "sheet/answer.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "sheet/foretold.h"
#include "sheet/wrap.h"

using namespace nook;

namespace {

Finding finding(Verdict verdict, double weight, const std::string& where) {
  return {verdict, weight, where, "gap 3/8\"", "scribe it"};
}

Foretold diagonal() {
  Foretold foretold;
  foretold.ends[0] = "left", foretold.ends[1] = "right";
  foretold.along[0] = inches(36), foretold.along[1] = inches(48);
  foretold.height = inches(41);
  foretold.value = Measured{inches(60).mm, 0.5};
  foretold.tape_sd = 1.5;
  return foretold;
}

}  // namespace

TEST_CASE("Findings stand worst first, then heaviest, and equal ones keep their order") {
  std::vector<Finding> all = {
      finding(Verdict::fits, 9, "a"), finding(Verdict::does_not_fit, 1, "b"),
      finding(Verdict::cannot_tell, 5, "c"), finding(Verdict::does_not_fit, 2, "d"),
      finding(Verdict::does_not_fit, 1, "e")};
  sort(all);
  std::string order;
  for (const Finding& one : all) order += one.where;
  CHECK(order == "dbeca");
}

TEST_CASE("A listed finding has its verdict in front and what to do next below it") {
  CHECK(listed({finding(Verdict::does_not_fit, 1, "deck")}, Style{}) ==
        "does not fit  deck: gap 3/8\"\n              -> scribe it\n");
}

TEST_CASE("Color changes no word of a listed finding") {
  Style style;
  style.color = true;
  CHECK(listed({finding(Verdict::cannot_tell, 1, "deck")}, style) ==
        "\033[33mcannot tell\033[0m   deck: gap 3/8\"\n              -> scribe it\n");
}

TEST_CASE("JSON answers open alike, also when the input was bad") {
  const Json good = opening("room", "a/b", Verdict::cannot_tell);
  CHECK(good.dump() ==
        R"({"nookfit":")" NOOKFIT_VERSION
        R"(","answer":"room","job":"a/b","verdict":"cannot tell","diagnostics":[]})");
  const Json bad = Json::parse(bad_input("fit", "j", {{"j/room.toml", {3, 5, 2}, "w", "c", "h"}}));
  CHECK(bad["verdict"] == "bad input");
  CHECK(bad["diagnostics"][0].dump() ==
        R"({"file":"j/room.toml","line":3,"column":5,"what":"w","code":"c","help":"h"})");
}

TEST_CASE("JSON numbers read back to the same value, and what is not UTF-8 does not stop it") {
  Json json;
  json["third"] = 1.0 / 3;
  json["name"] = "\xff";
  CHECK(Json::parse(dumped(json))["third"].get<double>() == 1.0 / 3);
}

TEST_CASE("Wrapped text fills its width, hangs under its start, and counts characters not bytes") {
  CHECK(wrapped("one two three", 9, "- ") == "- one two\n  three\n");
  CHECK(wrapped("\u00e4\u00e4 \u00e4\u00e4", 5, "") == "\u00e4\u00e4 \u00e4\u00e4\n");
  CHECK(wrapped("a word-longer-than-the-line b", 10, "") == "a\nword-longer-than-the-line\nb\n");
  CHECK(wrapped("", 10, "") == "\n");
}

TEST_CASE("A foretold tape says its marks, its length, and what a tape by hand would read") {
  CHECK(foretold_text(diagonal(), Style{}) ==
        "Straight from 36\" along the left wall to 48\" along the right wall, both 41\" up:\n"
        "         60\", give or take 1/16\" at exact marks. A tape between marks laid off\n"
        "         by hand reads that, give or take 1/8\".\n");
  Foretold unknown = diagonal();
  unknown.value.reset();
  unknown.why_not = "nothing says how the right wall stands";
  CHECK(foretold_text(unknown, Style{}) ==
        "Straight from 36\" along the left wall to 48\" along the right wall, both 41\" up:\n"
        "         nothing says how the right wall stands\n");
  CHECK(foretold_json(unknown)["value_mm"].is_null());
}
