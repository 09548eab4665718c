// The cutting list: blanks, checks, notches, holes, layouts.
#include "shop/cut.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "sample.h"
#include "shop/verify.h"
#include "solid/polygon.h"

using namespace nook;
using namespace nook::sample;
using Catch::WithinAbs;

namespace {

Contact contact(const std::string& part, EdgeSide edge, Fitting by) {
  Contact made;
  made.part = part, made.edge = edge, made.by = by;
  made.meets = "left wall";
  made.edge_given = edge == EdgeSide::left ? "left" : edge == EdgeSide::right ? "right" : "top";
  return made;
}

/// A design, what a fit found, and its cutting list.
struct List {
  Drawn drawn;
  FitAnswer fit;

  Part& piece(const std::string& name, Polygon outline) {
    drawn.design.parts.reserve(8);
    return drawn.piece(name, std::move(outline));
  }
  void place() { fit = as_drawn(drawn.design); }
  ContactFit& found(int contact, int piece, std::vector<GapPoint> line) {
    ContactFit made;
    made.contact = contact, made.piece = piece;
    made.how = &drawn.design.contacts[contact];
    made.part = fit.pieces[piece].name;
    made.edge = made.how->edge_given, made.meets = made.how->meets;
    made.line = std::move(line);
    for (const GapPoint& point : made.line) made.gap.most = std::max(made.gap.most, point.gap);
    fit.contacts.push_back(made);
    return fit.contacts.back();
  }
  CutAnswer answer() const { return cut({drawn.design, fit}); }
};

}  // namespace

TEST_CASE("cut: a plain panel - blank, outline and checks are those drawn") {
  List list;
  list.piece("shelf", rectangle(in(30), in(40)));
  list.place();
  const CutPiece piece = list.answer().pieces.at(0);
  CHECK_THAT(piece.blank.width / in(1), WithinAbs(30, 1e-9));
  CHECK_THAT(piece.blank.height / in(1), WithinAbs(40, 1e-9));
  CHECK(piece.outline.size() == 4);
  REQUIRE(piece.checks.widths.size() == 2);
  CHECK_THAT(piece.checks.widths[0].at / in(1), WithinAbs(2, 1e-9));
  CHECK_THAT(piece.checks.widths[1].at / in(1), WithinAbs(38, 1e-9));
  for (const double d : piece.checks.diagonals)
    CHECK_THAT(d / in(1), WithinAbs(50, 1e-9));  // 3-4-5
}

TEST_CASE("cut: an open corner - rip the blank 46 7/8, cut 46 at the back", "[reference]") {
  List list;
  list.piece("deck", rectangle(in(46), in(36)));
  list.drawn.design.contacts = {contact("deck", EdgeSide::right, Fitting::taper)};
  list.place();
  list.found(0, 0, {{0, 0, 0}, {in(36), in(0.88), 0}});
  const CutPiece piece = list.answer().pieces.at(0);
  CHECK_THAT(piece.blank.width / in(1), WithinAbs(46.88, 1e-6));
  REQUIRE(piece.tapers.size() == 1);
  CHECK(piece.tapers[0].widths);
  CHECK_THAT(piece.tapers[0].first_mm / in(1), WithinAbs(46, 1e-6));
  CHECK_THAT(piece.tapers[0].last_mm / in(1), WithinAbs(46.88, 1e-6));
  CHECK_THAT(piece.tapers[0].off_first_mm / in(1), WithinAbs(0.88, 1e-6));
  CHECK_THAT(piece.tapers[0].off_last_mm, WithinAbs(0, 1e-6));
}

TEST_CASE("cut: tapers on both sides - each is told by what comes off it") {
  // 1490 by 300: 4 off the left at the bottom and 1 at the top; nothing and 6 off the right.
  List list;
  list.piece("shelf", rectangle(1490, 300));
  list.drawn.design.contacts = {contact("shelf", EdgeSide::left, Fitting::taper),
                                contact("shelf", EdgeSide::right, Fitting::taper)};
  list.place();
  list.found(0, 0, {{0, -4, 0}, {300, -1, 0}});
  list.found(1, 0, {{0, 0, 0}, {300, -6, 0}});
  const CutPiece piece = list.answer().pieces.at(0);
  REQUIRE(piece.tapers.size() == 2);
  const double low = box_of(piece.outline).low.x, more = piece.tapers[0].off_last_mm;
  CHECK_THAT(piece.tapers[0].off_first_mm - more, WithinAbs(3, 0.01));
  CHECK_THAT(piece.tapers[1].off_last_mm - piece.tapers[1].off_first_mm, WithinAbs(6, 0.01));
  CHECK(low >= -1e-9);
  CHECK_THAT(piece.tapers[0].first_mm - piece.tapers[0].last_mm, WithinAbs(3, 0.01));
}

TEST_CASE("cut: two tapers side by side - each is told along the blank, not where they meet") {
  // 1200 by 400; the bottom runs up by 49 to the left, the left side in by 8 to the top. Extended
  // to the blank's ends: 400 - 49 = 351 high at the left, 1200 - 8 = 1192 wide at the top.
  List list;
  list.piece("shelf", rectangle(1200, 400));
  list.drawn.design.contacts = {contact("shelf", EdgeSide::bottom, Fitting::taper),
                                contact("shelf", EdgeSide::left, Fitting::taper)};
  list.place();
  list.found(0, 0, {{0, -49, 0}, {1200, 0, 0}});
  list.found(1, 0, {{0, 0, 0}, {400, -8, 0}});
  const CutPiece piece = list.answer().pieces.at(0);
  REQUIRE(piece.tapers.size() == 2);
  CHECK(!piece.tapers[0].widths);
  CHECK_THAT(piece.tapers[0].first_mm, WithinAbs(351, 0.5));
  CHECK_THAT(piece.tapers[0].last_mm, WithinAbs(400, 0.5));
  CHECK(piece.tapers[1].widths);
  CHECK_THAT(piece.tapers[1].first_mm, WithinAbs(1200, 0.5));
  CHECK_THAT(piece.tapers[1].last_mm, WithinAbs(1192, 0.5));
}

TEST_CASE("cut: a hand-scribed edge - wild wood, the scribers' setting, what comes off where") {
  List list;
  list.piece("panel", rectangle(in(37.25), in(84)));
  list.drawn.design.contacts = {contact("panel", EdgeSide::left, Fitting::scribe)};
  list.place();
  ContactFit& found = list.found(0, 0, {{0, in(0.25), 0}, {in(36), 0, 0}, {in(84), in(0.125), 0}});
  found.touches_at = in(36);
  const CutPiece piece = list.answer().pieces.at(0);
  CHECK_THAT(piece.blank.width / in(1), WithinAbs(37.75, 1e-6));
  CHECK_THAT(piece.finished.width / in(1), WithinAbs(37.5, 1e-6));
  REQUIRE(piece.wild.size() == 1);
  CHECK_THAT(piece.wild[0].beyond_mm / in(1), WithinAbs(0.25, 1e-6));
  REQUIRE(piece.scribes.size() == 1);
  const CutScribe& scribe = piece.scribes[0];
  // Held parallel, the blank touches at 36 while it stands 1/2 off its place.
  CHECK_THAT(scribe.touches_at / in(1), WithinAbs(36, 1e-9));
  CHECK_THAT(scribe.setting_mm / in(1), WithinAbs(0.5, 1e-9));
  REQUIRE(scribe.spots.size() == 3);
  CHECK_THAT(scribe.spots[0].off / in(1), WithinAbs(0.25, 1e-9));
  CHECK_THAT(scribe.spots[2].off / in(1), WithinAbs(0.375, 1e-9));
}

TEST_CASE("cut: what the scribers leave is the finished piece", "[property]") {
  List list;
  list.piece("panel", rectangle(in(37.25), in(84)));
  list.drawn.design.contacts = {contact("panel", EdgeSide::left, Fitting::scribe)};
  list.place();
  list.found(0, 0, {{0, 5, 0}, {500, 1, 0}, {1200, 0, 0}, {in(84), 3, 0}});
  const CutPiece piece = list.answer().pieces.at(0);
  for (const CutScribe::Spot& spot : piece.scribes[0].spots) {
    const double finished = chord_level(piece.outline, spot.at).length();
    CHECK_THAT(piece.blank.width - spot.off, WithinAbs(finished, 1e-6));
  }
}

TEST_CASE("cut: a notch - is taken out of the finished outline, beyond a moved edge too") {
  List list;
  list.piece("panel", rectangle(1000, 2000));
  list.drawn.design.contacts = {contact("panel", EdgeSide::left, Fitting::taper)};
  list.place();
  list.found(0, 0, {{0, 6, 0}, {2000, 6, 0}});
  NotchFit notch;
  notch.part = "panel", notch.around = "left wall baseboard";
  notch.polygon = rectangle(12, 130);
  list.fit.notches = {notch};
  const CutPiece piece = list.answer().pieces.at(0);
  // 6 beyond the drawn edge, and the notch 12 within it: 18 wide.
  CHECK_THAT(signed_area(piece.outline), WithinAbs(1006.0 * 2000 - 18 * 130, 1));
  REQUIRE(piece.notches.size() == 1);
  CHECK_THAT(piece.notches[0].width_mm, WithinAbs(18, 1e-6));
  CHECK(piece.notches[0].corner == "lower left");
}

TEST_CASE("cut: a notch that is not square, or opens to one edge - is told by its outline") {
  List list;
  list.piece("panel", rectangle(1000, 2000));
  list.drawn.design.contacts = {contact("panel", EdgeSide::left, Fitting::butt)};
  list.place();
  NotchFit pipe, molded;
  pipe.around = "pipe", pipe.polygon = {{0, 500}, {40, 500}, {40, 560}, {0, 560}};
  molded.around = "left wall baseboard", molded.polygon = {{0, 0}, {20, 0}, {12, 120}, {0, 130}};
  list.fit.notches = {pipe, molded};
  const CutPiece piece = list.answer().pieces.at(0);
  CHECK_THAT(signed_area(piece.outline),
             WithinAbs(1000.0 * 2000 - signed_area(pipe.polygon) - signed_area(molded.polygon), 1));
  int told = 0;
  for (const CutNotch& found : piece.notches) told += found.corner.empty();
  CHECK(told == 2);
}

TEST_CASE("cut: cutouts - from two edges that are not cut to the room") {
  List list;
  Part& part = list.piece("panel", rectangle(in(37.25), in(84)));
  Cutout porthole;
  porthole.name = "porthole";
  porthole.centre = Vec2{in(18), in(24)};
  porthole.diameter = inches(9.25);
  porthole.outline = {{in(13), in(19)}, {in(23), in(19)}, {in(23), in(29)}, {in(13), in(29)}};
  part.cutouts = {porthole};
  list.place();
  const CutHole plain = list.answer().pieces.at(0).holes.at(0);
  CHECK(plain.across == EdgeSide::left);
  CHECK_THAT(plain.from_across_mm / in(1), WithinAbs(18, 1e-9));
  CHECK_THAT(plain.from_up_mm / in(1), WithinAbs(24, 1e-9));
  CHECK_THAT(*plain.diameter_mm / in(1), WithinAbs(9.25, 1e-9));
  list.drawn.design.contacts = {contact("panel", EdgeSide::left, Fitting::scribe)};
  const CutHole scribed = list.answer().pieces.at(0).holes.at(0);
  CHECK(scribed.across == EdgeSide::right);
  CHECK_THAT(scribed.from_across_mm / in(1), WithinAbs(19.25, 1e-9));
}

TEST_CASE("cut: copies alike are one entry, one that differs stands by itself") {
  List list;
  Part& rung = list.piece("rung", rectangle(in(14), in(1.25)));
  rung.repeat = Repeat{3, {0, 0, in(10)}};
  list.drawn.design.contacts = {contact("rung", EdgeSide::right, Fitting::taper)};
  list.place();
  CutAnswer answer = list.answer();
  REQUIRE(answer.pieces.size() == 1);
  CHECK(answer.pieces[0].part == "rung");
  CHECK(answer.pieces[0].names.size() == 3);
  list.found(0, 1, {{0, 3, 0}, {in(1.25), 3, 0}});
  answer = list.answer();
  REQUIRE(answer.pieces.size() == 2);
  CHECK(answer.pieces[0].part == "rung 2");
  CHECK(answer.pieces[1].names == std::vector<std::string>{"rung 1", "rung 3"});
}

TEST_CASE("cut: by stock, longest first, laid out on what is sold") {
  List list;
  list.piece("short", rectangle(in(20), in(20)));
  list.piece("long", rectangle(in(20), in(70)));
  list.place();
  const CutAnswer answer = list.answer();
  CHECK(answer.pieces[0].part == "long");
  REQUIRE(answer.stock.size() == 1);
  REQUIRE(answer.stock[0].sheets);
  CHECK(answer.stock[0].sheets->sheets.size() == 1);
}

TEST_CASE("cut: sheets - the grain of a panel runs along its longer side, drawn up or across") {
  List list;
  list.piece("shelf", rectangle(in(40), in(11)));
  list.piece("side", rectangle(in(11), in(39)));
  list.place();
  const CutAnswer answer = list.answer();
  REQUIRE(answer.stock.at(0).sheets);
  for (const LaidPanel& panel : answer.stock[0].sheets->sheets.at(0)) {
    INFO(panel.part);
    CHECK_FALSE(panel.turned);
    CHECK_THAT(panel.width / in(1), WithinAbs(11, 1e-9));
    CHECK(panel.length / in(1) > 38);
  }
}

TEST_CASE("cut: lumber whose lengths nothing says is not laid out, and none is called too short") {
  List list;
  list.piece("rail", rectangle(in(48), in(3.5)));
  Stock& stock = list.drawn.design.stock[list.drawn.design.parts[0].stock];
  stock.kind = StockKind::lumber;
  list.place();
  CHECK_FALSE(list.answer().stock.at(0).boards);
  stock.lengths = {inches(96)};
  REQUIRE(list.answer().stock.at(0).boards);
  CHECK(list.answer().stock[0].boards->too_long.empty());
}

TEST_CASE("cut: copies alike - holes are named on each, one bored from another end stands alone") {
  List list;
  Part& cleat = list.piece("cleat", rectangle(in(14), in(1.25)));
  cleat.repeat = Repeat{3, {0, 0, in(10)}};
  list.place();
  DrillAnswer drill;
  drill.walls.emplace_back();
  for (const int k : {1, 2, 3}) {
    Hole hole;
    hole.id = "back " + std::to_string(k), hole.part = "cleat " + std::to_string(k);
    hole.end = k == 3 ? "right" : "left", hole.edge = "top";
    hole.from_end_mm = in(5), hole.from_edge_mm = in(0.5);
    hole.probe_first = k == 2;
    drill.walls[0].holes.push_back(hole);
  }
  const CutAnswer answer = cut({list.drawn.design, list.fit, &drill});
  REQUIRE(answer.pieces.size() == 2);
  const CutPiece& two = answer.pieces[0].names.size() == 2 ? answer.pieces[0] : answer.pieces[1];
  REQUIRE(two.names == std::vector<std::string>{"cleat 1", "cleat 2"});
  REQUIRE(two.pilots.at(0).twins.size() == 1);
  CHECK(two.pilots[0].twins[0].id == "back 2");
  CHECK_FALSE(two.pilots[0].probe_first);
  CHECK(two.pilots[0].twins[0].probe_first);
}

TEST_CASE("cut: a piece cut to its checks - is the piece that verify needs", "[property]") {
  List list;
  list.piece("deck", rectangle(in(46), in(36)));
  list.drawn.design.contacts = {contact("deck", EdgeSide::right, Fitting::taper),
                                contact("deck", EdgeSide::left, Fitting::scribe)};
  list.place();
  list.found(0, 0, {{0, 0, 0}, {in(36), in(0.875), 0}});
  list.found(1, 0, {{0, in(0.125), 0}, {in(36), 0, 0}});
  const CutChecks checks = list.answer().pieces.at(0).checks;
  PieceAsCut cut;
  cut.part = "deck";
  const auto reading = [](double at, double value) {
    CheckedAt made;
    made.at = millimetres(at), made.measured = {millimetres(value)};
    return made;
  };
  for (const CutCheck& width : checks.widths) cut.widths.push_back(reading(width.at, width.value));
  for (const CutCheck& height : checks.heights)
    cut.heights.push_back(reading(height.at, height.value));
  for (const double d : checks.diagonals) cut.diagonals.push_back(reading(0, d));
  Survey survey;
  const VerifyAnswer answer =
      verify({survey, needed_pieces(list.drawn.design, list.fit), {Unit::inch, {cut}}});
  CHECK(answer.verdict == Verdict::fits);
}

TEST_CASE("cut: a notch told by its outline - holds the whole notch", "[property]") {
  // A molded profile of many points at the left, mirrored at the right.
  for (const bool right : {false, true}) {
    List list;
    list.piece("panel", rectangle(1000, 2000));
    list.drawn.design.contacts = {contact("panel", EdgeSide::left, Fitting::butt)};
    list.place();
    NotchFit molded;
    molded.around = "left wall baseboard";
    molded.polygon = {{0, 0}, {27, 0}, {27, 125}};
    for (int k = 1; k < 20; ++k)
      molded.polygon.push_back({27 - k * 0.8 - std::sin(k * 0.7), 125 + k * 2.7});
    molded.polygon.push_back({0, 180});
    if (right) {
      for (Vec2& p : molded.polygon) p.x = 1000 - p.x;
      std::reverse(molded.polygon.begin(), molded.polygon.end());
    }
    list.fit.notches = {molded};
    const CutNotch notch = list.answer().pieces.at(0).notches.at(0);
    CHECK(notch.corner.empty());
    CHECK(notch.polygon.size() < molded.polygon.size());
    const Region told{notch.polygon, {}};
    for (const Vec2 p : molded.polygon)
      CHECK((contains(told, p) || border_distance(told, p) < 0.01));
  }
}

TEST_CASE("cut: a trapezoid - both slanted edges with offset and angle, and the corners joined") {
  List list;
  list.piece("gusset", {{0, 0}, {in(30), 0}, {in(20), in(24)}, {in(4), in(24)}});
  list.place();
  const CutPiece piece = list.answer().pieces.at(0);
  REQUIRE(piece.slants.size() == 2);
  for (const CutSlant& slant : piece.slants) {
    const bool left = slant.edge == EdgeSide::left;
    CHECK(slant.last);
    CHECK_THAT(slant.off_mm / in(1), WithinAbs(left ? 4 : 10, 1e-9));
    CHECK_THAT(slant.angle_deg, WithinAbs(left ? 9.4623 : 22.6199, 1e-4));  // atan 4/24, 10/24
  }
  CHECK_THAT(piece.sides[static_cast<size_t>(EdgeSide::bottom)] / in(1), WithinAbs(30, 1e-9));
  CHECK_THAT(piece.sides[static_cast<size_t>(EdgeSide::top)] / in(1), WithinAbs(16, 1e-9));
  CHECK(piece.contour.size() == 4);
  for (const CutCheck& check : piece.checks.heights)  // under the top, not on a slanted edge
    CHECK_THAT(check.value / in(1), WithinAbs(24, 1e-9));
  REQUIRE(piece.checks.diagonal_ends.size() == 2);
  CHECK_THAT(piece.checks.diagonal_ends[0][1].x / in(1), WithinAbs(20, 1e-9));
  CHECK_THAT(piece.checks.diagonal_ends[1][1].x / in(1), WithinAbs(4, 1e-9));
}

TEST_CASE("cut: a triangle - to a point at the top, 45 degrees") {
  List list;
  list.piece("brace", {{0, 0}, {in(20), 0}, {0, in(20)}});
  list.place();
  const CutPiece piece = list.answer().pieces.at(0);
  REQUIRE(piece.slants.size() == 1);
  CHECK(piece.slants[0].edge == EdgeSide::right);
  CHECK_THAT(piece.slants[0].angle_deg, WithinAbs(45, 1e-9));
  CHECK(piece.sides[static_cast<size_t>(EdgeSide::top)] == 0);
}

TEST_CASE("cut: a taper that the room asks for - told once") {
  List list;
  list.piece("deck", rectangle(in(46), in(36)));
  list.drawn.design.contacts = {contact("deck", EdgeSide::right, Fitting::taper)};
  list.place();
  list.found(0, 0, {{0, 0, 0}, {in(36), in(0.88), 0}});
  const CutPiece piece = list.answer().pieces.at(0);
  CHECK(piece.tapers.size() == 1);
  CHECK(piece.slants.empty());
}

TEST_CASE("cut: a clipped corner with wild edges - the outline counts from the blank") {
  List list;
  list.piece("shelf", {{0, 0}, {in(22), 0}, {in(22), in(8)}, {in(8), in(22)}, {0, in(22)}});
  list.drawn.design.contacts = {contact("shelf", EdgeSide::left, Fitting::scribe)};
  list.place();
  list.found(0, 0, {{0, in(0.25), 0}, {in(22), in(0.25), 0}});
  const CutPiece piece = list.answer().pieces.at(0);
  REQUIRE(piece.contour.size() == 5);
  CHECK_THAT(piece.contour[0].x, WithinAbs(0, 1e-9));
  CHECK_THAT(piece.contour[1].x, WithinAbs(piece.blank.width, 1e-9));
  CHECK(piece.slants.empty());  // two edges face right: the outline tells more
}

TEST_CASE("cut: a stick with a level foot and a plumb top - its ends, however steep") {
  List list;
  Part& stile =
      list.piece("stile", {{0, 0}, {in(72), 0}, {in(62.67), in(2.5)}, {in(.67), in(2.5)}});
  list.drawn.design.stock[stile.stock].kind = StockKind::lumber;
  list.place();
  const CutPiece piece = list.answer().pieces.at(0);
  REQUIRE(piece.slants.size() == 2);
  for (const CutSlant& slant : piece.slants) {
    const bool left = slant.edge == EdgeSide::left;
    CHECK((left || slant.edge == EdgeSide::right));
    CHECK_THAT(slant.off_mm / in(1), WithinAbs(left ? .67 : 9.33, 1e-9));
    CHECK_THAT(slant.angle_deg, WithinAbs(left ? 15.0 : 75.0, .01));  // atan .67/2.5, 9.33/2.5
  }
  CHECK_THAT(piece.sides[static_cast<size_t>(EdgeSide::top)] / in(1), WithinAbs(62, 1e-9));
}
