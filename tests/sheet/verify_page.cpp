// The page and the JSON of pieces as cut.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "sheet/verify_json.h"
#include "sheet/verify_text.h"

using namespace nook;

namespace {

CutFault fault(CutFault::Kind kind, CutFault::Of of, double measured, double wanted) {
  CutFault made;
  made.kind = kind;
  made.of = of;
  made.measured_mm = inches(measured).mm, made.wanted_mm = inches(wanted).mm;
  made.off = {made.measured_mm - made.wanted_mm, 0.55};
  return made;
}

Remedy remedy(Remedy::Do what, const std::string& edge, double by) {
  Remedy made;
  made.what = what;
  made.edge = edge;
  made.by_mm = made.by_first_mm = made.by_last_mm = inches(by).mm;
  return made;
}

VerifyAnswer sample_pieces() {
  CutFault ripped = fault(CutFault::Kind::still_stock, CutFault::Of::width, 48, 44.25);
  ripped.other = "sheet";
  Remedy left = remedy(Remedy::Do::trim, "left", 3.75);
  left.spoils = {{Spoil::Kind::cutout_moves, "porthole", inches(3.75).mm, "left"}};
  PieceVerify wide{"front panel",
                   Verdict::does_not_fit,
                   0,
                   {inches(3.75).mm, 0.6},
                   {ripped},
                   {remedy(Remedy::Do::trim, "right", 3.75), left}};
  CutFault lean = fault(CutFault::Kind::out_of_square, CutFault::Of::square, 0.205, 0);
  Remedy wedge = remedy(Remedy::Do::trim, "bottom", 0.125);
  wedge.by_last_mm = 0;
  wedge.also = {{"top", inches(0.125).mm, 0, inches(0.125).mm}};
  wedge.spoils = {{Spoil::Kind::comes_short, "height", inches(0.125).mm}};
  PieceVerify leaning{"side panel",
                      Verdict::does_not_fit,
                      0,
                      lean.off,
                      {lean},
                      {wedge, remedy(Remedy::Do::cut_again, "", 0)}};
  CutFault open = fault(CutFault::Kind::not_measured, CutFault::Of::square, 0, 0);
  open.verdict = Verdict::cannot_tell;
  PieceVerify unsure{
      "deck", Verdict::cannot_tell, 1, {}, {open}, {remedy(Remedy::Do::measure, "", 0)}};
  PieceVerify good{"shelf", Verdict::fits, 0.99, {0.3, 0.5}, {}, {}};
  VerifyAnswer answer;
  answer.verdict = Verdict::does_not_fit;
  answer.pieces = {good, unsure, leaning, wide};
  answer.not_measured = {"rung 1", "rung 2"};
  return answer;
}

}  // namespace

TEST_CASE("verify page: what is wrong and how to save it, worst first") {
  CHECK(verify_text(sample_pieces(), Style{}) ==
        R"(Pieces as cut: DOES NOT FIT

does not fit  front panel: still as wide as the sheet: 48", wanted 44 1/4"
              -> trim the right edge by 3 3/4"; or trim the left edge by 3 3/4"
                 (porthole comes 3 3/4" nearer to the left edge)
does not fit  side panel: out of square: its top leans 3/16" to the right, give
              or take 1/16"
              -> trim the bottom edge, 1/8" at the left and nothing at the
                 right, and the top edge, nothing at the left and 1/8" at the
                 right (it comes 1/8" short in height); or cut it again
cannot tell   deck: nothing says that it is square
              -> measure that and write it into pieces.toml, as finely as the
                 tape is marked
fits          shelf: as needed, off by under 1/16"

Not measured: rung 1, rung 2
)");
}

TEST_CASE("verify page: each fault in the words of the trade") {
  const Rounding eighths{Unit::inch, inches(1. / 16)};
  const auto width = CutFault::Of::width;
  CHECK(
      told(fault(CutFault::Kind::off_by_kerf, width, 35.875, 36), eighths) ==
      "35 7/8\" wide, wanted 36\": a kerf too small - the blade ran on the wrong side of the line");
  CutFault top = fault(CutFault::Kind::taper_reversed, width, 36, 36.875);
  top.where = "at the top";
  CHECK(told(top, eighths) ==
        "its taper runs the wrong way: 36\" wide at the top, wanted 36 7/8\"");
  CutFault wild = fault(CutFault::Kind::too_small, width, 35, 36);
  wild.wild_mm = inches(0.5).mm;
  CHECK(told(wild, eighths) ==
        "35\" wide, wanted 36\" and up to 1/2\" wild: 1\" too small, give or take 1/16\"");
  CutFault notch =
      fault(CutFault::Kind::notch_without_clearance, CutFault::Of::notch, 0.5625, 0.6875);
  notch.where = "lower left, width";
  CHECK(told(notch, eighths) ==
        "notch at the lower left, width 9/16\", wanted 11/16\": cut to what stands there, without "
        "its clearance");
  CutFault mirrored = fault(CutFault::Kind::mirrored, CutFault::Of::notch, 0, 0.6875);
  mirrored.where = "lower left", mirrored.other = "lower right";
  CHECK(told(mirrored, eighths) ==
        "mirrored: its notch is at the lower right, wanted at the lower left");
}

TEST_CASE("verify page: how each fault is mended, in the words of the trade") {
  const auto page = [](CutFault::Kind kind, const Remedy& mends) {
    CutFault notch = fault(kind, CutFault::Of::notch, 1.25, 0.75);
    notch.where = "lower left, width";
    VerifyAnswer answer;
    answer.verdict = Verdict::does_not_fit;
    answer.pieces = {{"panel", Verdict::does_not_fit, 0, notch.off, {notch}, {mends}}};
    return verify_text(answer, Style{});
  };
  const auto large = CutFault::Kind::notch_too_large, small = CutFault::Kind::notch_too_small;
  CHECK_THAT(page(large, remedy(Remedy::Do::fill, "lower left", 0.5)),
             Catch::Contains("glue a piece into the lower left notch"));
  CHECK_THAT(page(CutFault::Kind::too_small, remedy(Remedy::Do::fill, "left", 0.25)),
             Catch::Contains("close the 1/4\" left at its left edge"));
  CHECK_THAT(page(small, remedy(Remedy::Do::recut_notch, "lower left, width", 0.125)),
             Catch::Contains("cut the notch larger (lower left, width) by 1/8\""));
  CHECK_THAT(page(large, remedy(Remedy::Do::change_marks, "side panel", 0)),
             Catch::Contains("mark it side panel"));
}

TEST_CASE("verify page: a piece turned over or round, and wood left wild") {
  const auto page = [](const PieceVerify& piece) {
    VerifyAnswer answer;
    answer.pieces = {piece};
    return verify_text(answer, Style{});
  };
  const auto turned = [](CutFault::Kind kind, Turn turn) {
    CutFault over = fault(kind, CutFault::Of::whole, 0, 0);
    over.turn = turn;
    Remedy turns = remedy(Remedy::Do::turn, "", 0);
    turns.turn = turn;
    return PieceVerify{"deck", Verdict::does_not_fit, 0, over.off, {over}, {turns}};
  };
  CHECK_THAT(page(turned(CutFault::Kind::mirrored, Turn::sideways)),
             Catch::Contains("mirrored: turned over, left for right, it is as needed") &&
                 Catch::Contains("-> turn it over, left for right"));
  CHECK_THAT(page(turned(CutFault::Kind::mirrored, Turn::endways)),
             Catch::Contains("-> turn it over, top for bottom"));
  CHECK_THAT(page(turned(CutFault::Kind::end_for_end, Turn::end_for_end)),
             Catch::Contains("-> turn it end for end, its front still in front"));
  PieceVerify wild{"panel", Verdict::fits, 1, {0.3, 0.5}, {}, {}, inches(0.5).mm};
  CHECK_THAT(page(wild), Catch::Contains("as needed, 1/2\" left wild, off by under 1/16\""));
}

TEST_CASE("verify JSON: faults and remedies, not rounded") {
  const Json json = verify_json(sample_pieces(), "job");
  CHECK(json["answer"] == "verify");
  CHECK(json["verdict"] == "does not fit");
  const Json& wide = json["pieces"][3];
  CHECK(wide["part"] == "front panel");
  CHECK(wide["off_mm"] == inches(3.75).mm);
  CHECK(wide["remedy"][0]["trim_edge"] == "right");
  CHECK(wide["remedy"][0]["by_mm"] == inches(3.75).mm);
  CHECK(wide["remedy"][0]["spoils"].empty());
  CHECK(wide["remedy"][1]["spoils"][0] == "porthole comes 3 3/4\" nearer to the left edge");
  CHECK(json["pieces"][2]["remedy"][1]["trim_edge"].is_null());
  CHECK(json["not_measured"].size() == 2);
}
