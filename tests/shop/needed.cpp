// Pieces as needed: tapers, shop scribes, notches, wild edges, from what a fit says.
#include "shop/needed.h"

#include <catch2/catch.hpp>
#include <tuple>

#include "sample.h"
#include "shop/wild.h"

using namespace nook;
using namespace nook::sample;
using Catch::WithinAbs;

namespace {

/// One panel, 46 by 36 in (u by v), with one contact, and what a fit found for it.
struct Found {
  Drawn drawn;
  FitAnswer fit;

  explicit Found(EdgeSide edge, Fitting by, bool shop = false) {
    drawn.piece("deck", rectangle(in(46), in(36)));
    Contact contact;
    contact.part = "deck", contact.edge = edge, contact.meets = "right wall";
    contact.by = by, contact.shop = shop;
    contact.edge_given = "right";
    drawn.design.contacts = {contact};
    fit = as_drawn(drawn.design);
  }
  ContactFit& gap(std::vector<GapPoint> line, double wood) {
    ContactFit found;
    found.how = &drawn.design.contacts[0];
    found.part = "deck";
    found.line = std::move(line);
    found.wood_mm = wood;
    for (const GapPoint& point : found.line) found.gap.most = std::max(found.gap.most, point.gap);
    fit.contacts.push_back(found);
    return fit.contacts.back();
  }
  NeededPiece needed() const { return needed_pieces(drawn.design, fit).at(0); }
};

double width_at(const NeededPiece& piece, double v) {
  return chord_level(piece.outline, v).length() / in(1);
}

}  // namespace

TEST_CASE("needed: an open corner - 46 at the back, 46 7/8 at the front", "[reference]") {
  // A level deck 46 x 36 in a corner of 91.4 degrees: 36 tan 1.4 = 7/8, no wood there as drawn.
  Found found(EdgeSide::right, Fitting::taper);
  found.gap({{0, 0, 0}, {in(18), in(0.44), 0}, {in(36), in(0.88), 0}}, 0);
  CHECK_THAT(width_at(found.needed(), 0), WithinAbs(46, 1e-6));
  CHECK_THAT(width_at(found.needed(), in(36)), WithinAbs(46.88, 1e-6));
}

TEST_CASE("needed: wood that the piece stands off its drawn place - is used first") {
  Found found(EdgeSide::right, Fitting::taper);
  found.gap({{0, 0, 0}, {in(36), in(0.88), 0}}, in(0.5));
  CHECK_THAT(width_at(found.needed(), 0), WithinAbs(45.5, 1e-6));
  CHECK_THAT(width_at(found.needed(), in(36)), WithinAbs(46.38, 1e-6));
}

TEST_CASE("needed: a taper lies nowhere in the wall, a shop scribe follows it") {
  const std::vector<GapPoint> hollow{{0, 0, 0}, {in(18), 6, 0}, {in(36), 4, 0}};
  Found taper(EdgeSide::right, Fitting::taper);
  taper.gap(hollow, 0);
  CHECK_THAT(width_at(taper.needed(), in(18)), WithinAbs(46 + 2 / in(1), 1e-6));
  Found scribe(EdgeSide::right, Fitting::scribe, true);
  scribe.gap(hollow, 0);
  CHECK_THAT(width_at(scribe.needed(), in(18)), WithinAbs(46 + 6 / in(1), 1e-6));
  CHECK_THAT(width_at(scribe.needed(), in(36)), WithinAbs(46 + 4 / in(1), 1e-6));
  CHECK(scribe.needed().outline.size() == 5);
}

TEST_CASE("needed: left and bottom edges - the same gap makes the same piece, mirrored",
          "[property]") {
  for (const EdgeSide side : {EdgeSide::left, EdgeSide::right, EdgeSide::bottom, EdgeSide::top}) {
    const bool upright = side == EdgeSide::left || side == EdgeSide::right;
    Found found(side, Fitting::taper);
    const double far = upright ? in(36) : in(46);
    found.gap({{0, 0, 0}, {far, 10, 0}}, 0);
    const Polygon outline = found.needed().outline;
    const double near =
        upright ? chord_level(outline, 0).length() : chord_upright(outline, 0).length();
    const double end =
        upright ? chord_level(outline, in(36)).length() : chord_upright(outline, in(46)).length();
    CHECK_THAT(near, WithinAbs(upright ? in(46) : in(36), 1e-4));
    CHECK_THAT(end, WithinAbs((upright ? in(46) : in(36)) + 10, 1e-4));
  }
}

TEST_CASE("needed: a notch counts from the finished edge, clearance and all") {
  Found found(EdgeSide::left, Fitting::taper);
  found.drawn.design.contacts[0].notch = true;
  found.gap({{0, 5, 0}, {in(36), 0, 0}}, 2);
  NotchFit notch;
  notch.part = "deck", notch.around = "left wall baseboard";
  notch.polygon = rectangle(12, 100);
  found.fit.notches = {notch};
  const NeededPiece piece = found.needed();
  REQUIRE(piece.notches.size() == 1);
  CHECK(piece.notches[0].corner == "lower left");
  // The wall is 5 away at the bottom: 12 from the drawn edge is 17 from the wall, less the slope.
  CHECK_THAT(piece.notches[0].width_mm, WithinAbs(12 + 5 - 5 * 50 / in(36), 1e-6));
  CHECK_THAT(piece.notches[0].height_mm, WithinAbs(100, 1e-6));
  CHECK_THAT(piece.notches[0].clearance_mm, WithinAbs(in(0.125), 1e-9));
}

TEST_CASE("needed: a contact that accepts less lets its own side stray less") {
  Found found(EdgeSide::right, Fitting::butt);
  found.drawn.design.contacts[0].allow = millimetres(1);
  const auto sides = found.needed().sides;
  CHECK(sides[static_cast<size_t>(EdgeSide::right)].under == 1);
  CHECK(sides[static_cast<size_t>(EdgeSide::left)].under == kSawStrays);
  found.drawn.design.contacts[0].allow = millimetres(5);
  CHECK(found.needed().sides[static_cast<size_t>(EdgeSide::right)].under == kSawStrays);
}

TEST_CASE("needed: an edge by its number is the side that it lies on, a slanted one is none") {
  const Polygon house{{0, 0}, {100, 0}, {100, 80}, {50, 120}, {0, 80}};
  const auto side = [&](int first, int last) { return side_meant(house, EdgeRun{first, last}); };
  CHECK(side(0, 0) == EdgeSide::bottom);
  CHECK(side(1, 1) == EdgeSide::right);
  CHECK_FALSE(side(2, 2));
  CHECK(side(2, 3) == EdgeSide::top);
  CHECK(side(4, 4) == EdgeSide::left);
  CHECK_FALSE(side_meant(house, PieceFace::back));
}

TEST_CASE("needed: notches in one corner are one, the largest, with the least clearance") {
  Found found(EdgeSide::left, Fitting::butt);
  Contact& first = found.drawn.design.contacts[0];
  Contact second = first;
  first.clearance = inches(0.5), second.clearance = inches(0.125);
  found.drawn.design.contacts = {first, second};
  const auto notch = [](int contact, double width, double height) {
    NotchFit made;
    made.contact = contact, made.piece = 0;
    made.polygon = rectangle(in(width), in(height));
    return made;
  };
  found.fit.notches = {notch(0, 1, 5), notch(1, 2, 3)};
  const auto notches = found.needed().notches;
  REQUIRE(notches.size() == 1);
  CHECK(notches[0].corner == "lower left");
  CHECK_THAT(notches[0].width_mm / in(1), WithinAbs(2, 1e-9));
  CHECK_THAT(notches[0].height_mm / in(1), WithinAbs(5, 1e-9));
  CHECK_THAT(notches[0].clearance_mm / in(1), WithinAbs(0.125, 1e-9));
}

TEST_CASE("wild: 1/2 in beyond the drawn edge, more where the gap takes it") {
  Found found(EdgeSide::right, Fitting::scribe);
  const auto beyond = [&] {
    const Piece& piece = found.fit.pieces[0];
    return wild_edges(piece, found.drawn.design, found.fit).at(0).beyond_mm / in(1);
  };
  CHECK_THAT(beyond(), WithinAbs(0.5, 1e-9));
  ContactFit& gap = found.gap({{0, 0, 0}, {in(36), in(0.4), 0}}, 0);
  CHECK_THAT(beyond(), WithinAbs(0.75, 1e-9));
  gap.line[1].gap = in(0.75);
  CHECK_THAT(beyond(), WithinAbs(1, 1e-9));
  gap.wood_mm = in(0.75);
  CHECK_THAT(beyond(), WithinAbs(0.5, 1e-9));
}

TEST_CASE("wild: in whole marks of the job's tape") {
  Found found(EdgeSide::right, Fitting::scribe);
  ContactFit& gap = found.gap({{0, 0, 0}, {in(36), 30, 0}}, 0);
  for (const auto& [unit, open, left] : {std::tuple{Unit::mm, 0.0, 13.0},
                                         {Unit::mm, 10.0, 20.0},
                                         {Unit::mm, 30.0, 37.0},
                                         {Unit::cm, 0.0, 13.0},
                                         {Unit::inch, 30.0, in(1.4375)}}) {
    found.drawn.design.units = unit;
    gap.line[1].gap = open;
    const WildEdge wild = wild_edges(found.fit.pieces[0], found.drawn.design, found.fit).at(0);
    CHECK_THAT(wild.beyond_mm, WithinAbs(left, 1e-9));
  }
}

TEST_CASE("wild: never more than the stock has - the piece then comes closer instead") {
  // A shelf as wide as its board: nothing can be left on its bottom edge.
  Found found(EdgeSide::bottom, Fitting::scribe);
  Stock& stock = found.drawn.design.stock[0];
  stock.kind = StockKind::lumber;
  stock.width = inches(36);
  stock.lengths = {inches(96)};
  found.gap({{0, in(0.25), 0}, {in(46), 0, 0}}, 0);
  const Piece& piece = found.fit.pieces[0];
  CHECK(wild_edges(piece, found.drawn.design, found.fit).at(0).beyond_mm == 0);
  const NeededPiece needed = found.needed();
  CHECK_THAT(needed.closer.y / in(1), WithinAbs(-0.25, 1e-9));
  CHECK_THAT(chord_upright(needed.fitted, 1).length() / in(1), WithinAbs(36, 0.01));
  CHECK_THAT(chord_upright(needed.fitted, in(46) - 1).length() / in(1), WithinAbs(35.75, 0.01));
}
