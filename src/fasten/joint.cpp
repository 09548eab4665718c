// Screws through a face, or pocket screws out of an end, into another piece.
#include "fasten/joint.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "base/normal.h"
#include "fasten/hole_rows.h"
#include "fasten/joint_row.h"
#include "fasten/screw_size.h"
#include "fasten/strength.h"

namespace nook {
namespace {

// Chosen: a pocket leans 15 degrees, half of its screw stays in the piece.
const Direction kPocket = direction(degrees(15));
constexpr double kPocketInside = .5;

// The side of a piece that an outward direction in its plane points to.
std::string side_towards(Vec2 out) {
  if (std::abs(out.x) >= std::abs(out.y)) return out.x < 0 ? "left" : "right";
  return out.y < 0 ? "bottom" : "top";
}

class JointMaker {
 public:
  explicit JointMaker(const Joining& j)
      : joining_(j),
        part_(j.part),
        to_(j.to),
        meeting_(j.meeting),
        fastening_(j.fastening),
        design_(j.design),
        say_(j.say),
        row_(row_of(j)),
        least_hold_(distances_for(j.fastening.screw).least_hold) {
    out_.drill = {part_.piece.name, to_.piece.name, {}};
    const Stock& stock = design_.stock[to_.piece.drawn->stock];
    out_.end_grain =
        stock.kind == StockKind::lumber && std::abs(dot(meeting_.plane.normal, to_.frame.u)) > .9;
  }

  JointScrews all() {
    if (!row_)
      refuse("there is no room for a screw clear of edges, ends and cutouts", "");
    else
      for (const RowPlace& place : row_->places)
        if (deep_right(place)) push(place, *row_);
    sort_holes();
    return std::move(out_);
  }

 private:
  double embedment() const {
    const Screw& screw = fastening_.screw;
    if (meeting_.by_edge) return screw.length.mm * (1 - kPocketInside) * kPocket.cos - meeting_.gap;
    return embedment_of(screw, part_.piece.thickness, meeting_.gap);
  }

  // A screw must reach the other piece and stay in it.
  bool deep_right(const RowPlace& place) {
    const CutPlane& plane = meeting_.plane;
    const Vec3 p = plane.at + place.at.x * plane.e1 + place.at.y * plane.e2;
    const double deep = wood_ahead(to_.piece, to_.frame, p, plane.normal) + meeting_.inside;
    const double sunk = embedment();
    const double length = fastening_.screw.length.mm;
    out_.wood_depth = out_.drill.holes.empty() ? deep : std::min(out_.wood_depth, deep);
    if (sunk <= 0)
      refuse(fmt::format("a {} screw does not reach it", say_.length(length)),
             fmt::format("use one of {}", say_.screw(say_.sold_from(length - sunk + least_hold_))));
    else if (sunk >= deep)
      refuse(fmt::format("a {} screw comes out of the far side, {} deep in {} of wood",
                         say_.length(length), say_.length(sunk), say_.length(deep)),
             fmt::format("use one of {} at most",
                         say_.screw(say_.sold_up_to(length - (sunk - deep) - say_.step()))));
    return sunk > 0 && sunk < deep;
  }

  void push(const RowPlace& place, const JointRow& row) {
    Hole h;
    h.part = part_.piece.name;
    h.into = to_.piece.name;
    measure(h, place, row);
    const double across = row.along_x ? place.at.y : place.at.x;
    h.edge_distance_mm = std::min(across - place.across.from, place.across.to - across);
    h.embedment_mm = embedment();
    h.hit_chance = chance_of(place, row);
    h.sure = h.hit_chance >= joining_.sure;
    bore(h);
    warn(h, row);
    out_.drill.holes.push_back(std::move(h));
    out_.gaps.push_back(meeting_.gap);
  }

  void bore(Hole& h) const {
    const double gravity = design_.stock[to_.piece.drawn->stock].gravity.value_or(kUsualGravity);
    // What is driven up is pulled out by its load.
    const Vec3 into = meeting_.plane.normal;
    const bool hangs = fastening_.load_n && into.z > std::hypot(into.x, into.y);
    const Pilot pilot =
        pilot_for(fastening_.screw, gravity, fastening_.pull_n.has_value() || hangs);
    h.pilot_mm = pilot.thread;
    h.shank_pilot_mm = pilot.shank;
    h.clearance_mm = pilot.clearance;
    h.shim_mm = meeting_.gap;
    h.depth_mm =
        fastening_.screw.length.mm + (meeting_.by_edge ? 0 : fastening_.screw.head_below.mm);
  }

  void warn(Hole& h, const JointRow& row) const {
    if (row.tight)
      h.warnings.push_back(fastening_.prebored ? "near an edge or end: it may split even pre-bored"
                                               : "near an edge or end: pre-bore, it may split");
    if (h.embedment_mm < least_hold_)
      h.warnings.push_back(fmt::format("only {} in the wood, short of the {} that count{}",
                                       say_.at_most(h.embedment_mm), say_.at_least(least_hold_),
                                       instead(h.embedment_mm)));
    if (meeting_.by_edge) h.warnings.push_back("pocket holes: drill them from below or behind");
  }

  // A longer screw where the wood is deep enough for it.
  std::string instead(double sunk) const {
    const double length = fastening_.screw.length.mm;
    if (meeting_.by_edge) return {};
    const double longer = say_.sold_from(length + least_hold_ - sunk);
    if (out_.wood_depth <= sunk + longer - length + say_.step()) return ": use a thinner one";
    return ": use one of " + say_.screw(longer);
  }

  void measure(Hole& h, const RowPlace& place, const JointRow& row) const {
    if (meeting_.by_edge) return measure_edge(h, place);
    h.u_mm = place.at.x;
    h.v_mm = place.at.y;
    const SideScale along = scale_of(joining_, row.along_x);
    const SideScale across = scale_of(joining_, !row.along_x);
    h.end = along.side;
    h.from_end_mm = along.from(row.along_x ? h.u_mm : h.v_mm);
    h.edge = across.side;
    h.from_edge_mm = across.from(row.along_x ? h.v_mm : h.u_mm);
  }

  // Pocket screws leave through an edge: they count along it, from its end that is left or top.
  void measure_edge(Hole& h, const RowPlace& place) const {
    const Polygon& outline = part_.piece.drawn->outline;
    const Vec2 a = outline[meeting_.edge], b = outline[(meeting_.edge + 1) % outline.size()];
    const double length = norm(b - a);
    const Vec2 d = (1 / length) * (b - a), uv = a + place.at.x * d;
    h.u_mm = uv.x;
    h.v_mm = uv.y;
    h.edge = side_towards(-left_of(d));
    const bool from_a = std::abs(d.x) >= std::abs(d.y) ? d.x > 0 : d.y < 0;
    h.end = side_towards(from_a ? -d : d);
    h.from_end_mm = from_a ? place.at.x : length - place.at.x;
  }

  void sort_holes() {
    auto& holes = out_.drill.holes;
    std::stable_sort(holes.begin(), holes.end(),
                     [](const Hole& a, const Hole& b) { return a.from_end_mm < b.from_end_mm; });
  }

  void refuse(const std::string& why, std::string advice) {
    const std::string reason = fmt::format("into {}, {}", to_.piece.name, why);
    for (const Unreachable& u : out_.unreachable)
      if (u.reason == reason) return;
    out_.unreachable.push_back({part_.piece.name, reason, std::move(advice)});
  }

  const Joining& joining_;
  const Placed& part_;
  const Placed& to_;
  const Meeting& meeting_;
  const Fastening& fastening_;
  const Design& design_;
  const Saying& say_;
  std::optional<JointRow> row_;
  double least_hold_;
  JointScrews out_;
};

}  // namespace

JointScrews joint_screws(const Joining& joining) {
  return JointMaker(joining).all();
}

}  // namespace nook
