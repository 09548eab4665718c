// A piece given a new outline: what lies on it stays where it is in the room, read back from the
// text that was edited.
#include "adapt/reshape.h"

#include <catch2/catch.hpp>

#include "base/diagnostic.h"
#include "design/piece.h"
#include "fit/joint.h"
#include "job/job.h"

using namespace nook;
using Catch::WithinAbs;

namespace {

constexpr double kIn = kMillimetresPerInch;

// A panel 40 by 30 with three cutouts, there twice; a load 10 along the first and the second.
Revision panel(const std::string& shape = "{ size = ['40', '30'] }") {
  const std::string text =
      "corner = ['left', 'right']\n[stock.ply]\nkind = 'plywood'\nthickness = '3/4'\n"
      "sheet = ['48', '96']\n[[part]]\nname = 'panel'\nstock = 'ply'\nshape = " +
      shape +
      "\ncutouts = [{ circle = ['8', '8'], diameter = '4' }, { rect = ['20', '5', '6', '4'] },\n"
      "  { points = [['30', '10'], ['30', '18'], ['36', '10']] }]  # typed clockwise\n"
      "place = { at = ['60', '0', '20'], u = '-x', v = '+z' }\n"
      "repeat = { count = 2, step = ['0', '12', '0'] }\n"
      "[[fasten]]\npart = 'panel'\nto = 'left wall'\nscrew = { gauge = 10, length = '3' }\n"
      "load = '100 lb'\nat = '10'\n"
      "[[fasten]]\npart = 'panel 2'\nto = 'left wall'\nscrew = { gauge = 10, length = '3' }\n"
      "load = '100 lb'\nat = '10'\n";
  const auto design = parse_design(text, "design.toml");
  if (!design) FAIL(message(design.error()[0], text));
  return {text, std::make_shared<const Design>(*design)};
}

Revision set_out_by(const Revision& draft, EdgeSide side, Vec2 ends) {
  const Part& part = draft.design->parts[0];
  const EdgeRun run = run_of(side, part.outline);
  const auto edited = redrawn(draft, reshape(*draft.design, 0, set_out(part, run, ends)));
  REQUIRE(edited);
  return *edited;
}

std::vector<Vec3> cutouts_in_room(const Design& design) {
  std::vector<Vec3> all;
  const Piece piece = pieces_of(design).at(0);
  for (const Cutout& cutout : piece.drawn->cutouts)
    for (const Vec2 p : cutout.outline) all.push_back(piece.frame.room_from_piece({p.x, p.y, 0}));
  return all;
}

std::vector<Vec3> loads_in_room(const Design& design) {
  std::vector<Vec3> all;
  const Frame frame = pieces_of(design).at(0).frame;
  for (const Fastening& fastening : design.fastenings)
    all.push_back(frame.room_from_piece({fastening.load_at.value().mm, 0, 0}));
  return all;
}

// Where a piece's outline begins and ends across the room.
Vec2 reach(const Design& design) {
  const Piece piece = pieces_of(design).at(0);
  Vec2 reach{1e9, -1e9};
  for (const Vec2 p : piece.drawn->outline) {
    const double x = piece.frame.room_from_piece({p.x, p.y, 0}).x;
    reach = {std::min(reach.x, x), std::max(reach.y, x)};
  }
  return reach;
}

void check_same(const std::vector<Vec3>& a, const std::vector<Vec3>& b) {
  REQUIRE(a.size() == b.size());
  for (std::size_t i = 0; i < a.size(); ++i) CHECK_THAT(norm(a[i] - b[i]), WithinAbs(0, 1e-3));
}

}  // namespace

TEST_CASE("reshape: a side set out or trimmed - cutouts and loads stay in the room") {
  const Revision draft = panel();
  for (const EdgeSide side : {EdgeSide::left, EdgeSide::right, EdgeSide::bottom, EdgeSide::top})
    for (const double by : {0.5 * kIn, -1.25 * kIn}) {
      INFO("side " << static_cast<int>(side) << " by " << by);
      const Revision edited = set_out_by(draft, side, {by, by});
      check_same(cutouts_in_room(*edited.design), cutouts_in_room(*draft.design));
      if (side == EdgeSide::left || side == EdgeSide::right)
        check_same(loads_in_room(*edited.design), loads_in_room(*draft.design));
      CHECK(edited.text.find("# typed clockwise") != std::string::npos);
    }
}

TEST_CASE("reshape: facing the left wall a piece's left edge is the far one from the corner") {
  // Drawn from 60 back to 20 along x.
  CHECK_THAT(reach(*panel().design).x / kIn, WithinAbs(20, 1e-6));
  const Vec2 left = reach(*set_out_by(panel(), EdgeSide::left, {kIn, kIn}).design);
  CHECK_THAT(left.x / kIn, WithinAbs(20, 1e-4));
  CHECK_THAT(left.y / kIn, WithinAbs(61, 1e-4));
  const Vec2 right = reach(*set_out_by(panel(), EdgeSide::right, {-kIn, -kIn}).design);
  CHECK_THAT(right.x / kIn, WithinAbs(21, 1e-4));
  CHECK_THAT(right.y / kIn, WithinAbs(60, 1e-4));
}

TEST_CASE("reshape: a taper of a rectangle is typed as points, of points as points") {
  const std::string points =
      "{ points = [['0', '0'], ['0', '30'], ['40', '30'], ['40', '0'], ['0', '0']] }";
  for (const Revision& draft : {panel(), panel(points)}) {
    const Revision edited = set_out_by(draft, EdgeSide::left, {kIn, 0});
    check_same(cutouts_in_room(*edited.design), cutouts_in_room(*draft.design));
    const Polygon& outline = edited.design->parts[0].outline;
    REQUIRE(outline.size() == 4);
    // A side runs down on the left, so that its first end is the upper one: 41 wide there.
    double top = 0, bottom = 0;
    for (const Vec2 p : outline) {
      if (p.y > 15 * kIn) top = std::max(top, 41 * kIn - p.x);
      if (p.y < 15 * kIn) bottom = std::max(bottom, 41 * kIn - p.x);
    }
    CHECK_THAT(top / kIn, WithinAbs(41, 1e-4));
    CHECK_THAT(bottom / kIn, WithinAbs(40, 1e-4));
  }
}

TEST_CASE("reshape: a cover trim in easy numbers of the design's unit") {
  CHECK_THAT(cover_width(Unit::inch).mm, WithinAbs(0.75 * kIn, 1e-9));
  for (const Unit unit : {Unit::mm, Unit::cm})
    CHECK_THAT(cover_width(unit).mm, WithinAbs(19, 1e-9));
}
