// Screws through a face, or pocket screws out of an end, into another piece.
#include "fasten/joint.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "fasten/free_face.h"
#include "fasten/hole_rows.h"
#include "fasten/normal.h"
#include "fasten/screw_size.h"
#include "fasten/spacing.h"
#include "fasten/strength.h"

namespace nook {
namespace {

// Chosen: a pocket leans 15 degrees, half of its screw stays in the piece.
const Direction kPocket = direction(degrees(15));
constexpr double kPocketInside = .5;
// Chosen: in an edge too narrow for the usual edge distance a screw keeps its own diameter.
constexpr double kNarrow = 1;
// Sd of a hole against the other piece: laying out and setting the pieces, 1 mm each. Chosen
const double kJointSd = std::numbers::sqrt2 * kLayingOut;

const Region& largest(const Regions& regions) {
  return *std::max_element(regions.begin(), regions.end(),
                           [](const Region& a, const Region& b) { return area({a}) < area({b}); });
}

class JointMaker {
 public:
  JointMaker(const Placed& part, const Placed& to, const Meeting& meeting,
             const Fastening& fastening, const Design& design, const Saying& say)
      : part_(part),
        to_(to),
        meeting_(meeting),
        fastening_(fastening),
        design_(design),
        say_(say),
        region_(largest(meeting.overlap)),
        box_(box_of(region_.outline)),
        distances_(distances_for(fastening.screw)) {
    const Vec2 span = box_.high - box_.low;
    along_x_ = meeting.by_edge || span.x >= span.y;
    out_.drill = {part.piece.name, to.piece.name, {}};
    out_.into = meeting.plane.normal;
    const Stock& stock = design.stock[to.piece.drawn->stock];
    out_.end_grain = stock.kind == StockKind::lumber && std::abs(dot(out_.into, to.frame.u)) > .9;
  }

  JointScrews all() {
    const std::vector<double> places = spread_over(free_places(), count(), distances_.apart);
    if (places.empty()) refuse("there is no room for a screw clear of edges, ends and cutouts");
    for (double place : places)
      if (!add(place)) break;
    return std::move(out_);
  }

 private:
  Vec2 point(double along, double across) const {
    return along_x_ ? Vec2{along, across} : Vec2{across, along};
  }
  // As many as asked, and one every 12 in of a long joint (common practice, no source).
  int count() const {
    constexpr double kEvery = 305;
    const double length = along_x_ ? box_.high.x - box_.low.x : box_.high.y - box_.low.y;
    return std::max(fastening_.per_stud, 1 + static_cast<int>(length / kEvery));
  }
  // Where the overlap runs across the row at `along`.
  std::optional<Stretch> across(double along) const {
    const Vec2 p = point(along, 0), d = along_x_ ? Vec2{0, 1} : Vec2{1, 0};
    for (const Stretch& s : inside(region_, p, d)) return s;
    return std::nullopt;
  }
  double margin(const Stretch& s) const {
    const bool narrow = s.to - s.from < 2 * distances_.edge;
    return narrow ? kNarrow * diameter_of(fastening_.screw) : distances_.edge;
  }
  double row_middle(const Stretch& s) const {
    return meeting_.by_edge ? (s.from + s.to) / 2
                            : std::round((s.from + s.to) / 2 / say_.step()) * say_.step();
  }

  std::vector<double> free_places() const {
    const FreeFace face(part_.piece, design_, {}, distances_);
    const double low = along_x_ ? box_.low.x : box_.low.y;
    const double high = along_x_ ? box_.high.x : box_.high.y;
    const double margin_ends = std::min(distances_.edge, (high - low) / 4);
    std::vector<double> places;
    for (double x = std::ceil(low / say_.step()) * say_.step(); x <= high; x += say_.step()) {
      if (x < low + margin_ends || x > high - margin_ends) continue;
      const auto s = across(x);
      if (!s || s->to - s->from < 2 * margin(*s)) continue;
      if (meeting_.by_edge || face.free(point(x, row_middle(*s)))) places.push_back(x);
    }
    return places;
  }

  double embedment() const {
    const Screw& screw = fastening_.screw;
    if (meeting_.by_edge) return screw.length.mm * (1 - kPocketInside) * kPocket.cos - meeting_.gap;
    return screw.length.mm - (part_.piece.thickness - screw.head_below.mm) - meeting_.gap;
  }

  bool add(double along) {
    const Stretch s = *across(along);
    const Vec2 at = point(along, row_middle(s));
    const CutPlane& plane = meeting_.plane;
    const Vec3 p = plane.at + at.x * plane.e1 + at.y * plane.e2;
    const double deep = wood_ahead(to_.piece, to_.frame, p, plane.normal), sunk = embedment();
    if (sunk <= 0) {
      refuse(fmt::format("a {} screw does not reach it", say_.length(fastening_.screw.length.mm)));
      return false;
    }
    if (sunk >= deep) {
      refuse(fmt::format(
          "the screw comes out of the far side: it goes {} into {} of wood; use one "
          "at least {} shorter",
          say_.length(sunk), say_.length(deep), say_.at_least(sunk - deep + say_.step())));
      return false;
    }
    push(at, s, sunk);
    return true;
  }

  void push(Vec2 at, const Stretch& s, double sunk) {
    Hole h;
    const Vec2 uv = meeting_.by_edge ? edge_point(at) : at;
    h.part = part_.piece.name;
    h.u_mm = uv.x;
    h.v_mm = uv.y;
    measure(h);
    const double across_at = along_x_ ? at.y : at.x, keep = margin(s);
    h.edge_distance_mm = std::min(across_at - s.from, s.to - across_at);
    h.embedment_mm = sunk;
    h.hit_chance = normal_below(s.to - keep - across_at, kJointSd) -
                   normal_below(s.from + keep - across_at, kJointSd);
    const double gravity = design_.stock[to_.piece.drawn->stock].gravity.value_or(kUsualGravity);
    const Pilot pilot = pilot_for(fastening_.screw, gravity, fastening_.pull_n.has_value());
    h.pilot_mm = pilot.thread;
    h.shank_pilot_mm = pilot.shank;
    h.clearance_mm = pilot.clearance;
    h.shim_mm = meeting_.gap;
    h.depth_mm =
        fastening_.screw.length.mm + (meeting_.by_edge ? 0 : fastening_.screw.head_below.mm);
    warn(h, keep);
    out_.drill.holes.push_back(std::move(h));
    out_.gaps.push_back(meeting_.gap);
  }

  void warn(Hole& h, double keep) const {
    if (keep < distances_.edge)
      h.warnings.push_back("the wood is thin here: pre-bore, keep to its middle");
    if (h.embedment_mm < distances_.least_hold)
      h.warnings.push_back(
          fmt::format("only {} in the wood: too little to count on", say_.length(h.embedment_mm)));
    if (meeting_.by_edge)
      h.warnings.push_back("pocket hole: drill it from the side that is not seen");
  }

  // A point of the edge plane on the piece: its place along the edge, u and v.
  Vec2 edge_point(Vec2 at) const {
    const Polygon& outline = part_.piece.drawn->outline;
    const Vec2 a = outline[meeting_.edge], b = outline[(meeting_.edge + 1) % outline.size()];
    return a + (at.x / norm(b - a)) * (b - a);
  }

  // From the nearer end and the nearer edge of the piece, the top where both are alike.
  void measure(Hole& h) const {
    const Box2 box = box_of(part_.piece.drawn->outline);
    const double left = h.u_mm - box.low.x, right = box.high.x - h.u_mm;
    const double bottom = h.v_mm - box.low.y, top = box.high.y - h.v_mm;
    h.end = left <= right ? "left" : "right";
    h.from_end_mm = std::min(left, right);
    h.edge = top <= bottom ? "top" : "bottom";
    h.from_edge_mm = std::min(top, bottom);
  }

  void refuse(std::string why) {
    out_.unreachable.push_back({part_.piece.name, fmt::format("into {}: {}", to_.piece.name, why)});
  }

  const Placed& part_;
  const Placed& to_;
  const Meeting& meeting_;
  const Fastening& fastening_;
  const Design& design_;
  const Saying& say_;
  const Region& region_;
  Box2 box_;
  Distances distances_;
  bool along_x_ = true;
  JointScrews out_;
};

}  // namespace

JointScrews joint_screws(const Placed& part, const Placed& to, const Meeting& meeting,
                         const Fastening& fastening, const Design& design, const Saying& say) {
  return JointMaker(part, to, meeting, fastening, design, say).all();
}

}  // namespace nook
