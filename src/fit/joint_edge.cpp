// Spots along edges, with the exact places where boards and obstacles begin and end.
#include <algorithm>
#include <cmath>

#include "design/side.h"
#include "fit/joint_builder.h"
#include "solid/simplified.h"

namespace nook {
namespace {

// Straight lines between spots this far apart stay within 0.01 mm of a field of sd 10 mm and reach
// 400 mm: step^2 / 8 x sd sqrt 3 / reach^2. Chosen.
constexpr double kStep = 25;
constexpr int kCoarse = 4;  // every fourth spot is looked at in the draws; chosen
// Of an edge of many short lines the draws look at the corners that stray more than this from the
// line of the others, and at one spot every kCoarse steps: a gap is straight in between to within
// it. Chosen, a quarter of what a saw follows.
constexpr double kStray = 0.1;
constexpr double kHair = 0.001;  // mm; each side of a step in what is met

// One straight edge of a run.
struct Segment {
  Vec2 from, to;
  double t = 0;  // of its first point
  double length() const { return norm(to - from); }
  Vec2 at(double s) const { return from + (s / length()) * (to - from); }
  Vec2 out() const { return (-1 / length()) * left_of(to - from); }
};

std::vector<Segment> segments_of(const Polygon& points) {
  std::vector<Segment> all;
  double t = 0;
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const Segment s{points[i], points[i + 1], t};
    if (s.length() < 1e-9) continue;
    all.push_back(s);
    t += s.length();
  }
  return all;
}

// A stretch that takes an end of an edge reaches this far beyond it, so that the end is inside.
constexpr double kBeyond = 2 * kHair;

// Where low <= q <= high for q running evenly from q0 to q1 over the length.
Stretch within(double q0, double q1, Stretch bounds, double length) {
  const double rate = (q1 - q0) / length;
  if (std::abs(rate) < 1e-12)
    return q0 >= bounds.from && q0 <= bounds.to ? Stretch{-kBeyond, length + kBeyond}
                                                : Stretch{1, 0};
  double a = (bounds.from - q0) / rate, b = (bounds.to - q0) / rate;
  if (a > b) std::swap(a, b);
  return {std::max(a, -kBeyond), std::min(b, length + kBeyond)};
}

// The stretch of a segment, on one face, that looks at a block grown by `margin`.
Stretch facing(const JointBuilder& b, int wall, const BlockHere& here, const Segment& s,
               std::pair<double, double> w_margin) {
  const WallShape& shape = b.view.shape().walls[wall];
  const auto [w, margin] = w_margin;
  const Vec3 p = b.frame.room_from_piece(at_face(s.from, w));
  const Vec3 q = b.frame.room_from_piece(at_face(s.to, w));
  const double ap = shape.wall_from_room(plan(p)).x, aq = shape.wall_from_room(plan(q)).x;
  const Stretch along = within(ap, aq, {here.a_from - margin, here.a_to + margin}, s.length());
  const auto over = [&](Block::Bound bound, double a, double z) {
    return z - b.view.z_of(bound, wall, a);
  };
  const Block& block = *here.block;
  constexpr double kFar = 1e9;
  const Stretch above = within(over(block.height_from, ap, p.z), over(block.height_from, aq, q.z),
                               {-margin, kFar}, s.length());
  const Stretch below = within(over(block.height_to, ap, p.z), over(block.height_to, aq, q.z),
                               {-kFar, margin}, s.length());
  return {std::max({along.from, above.from, below.from}), std::min({along.to, above.to, below.to})};
}

double notch_margin(const Contact& how) {
  return how.notch ? how.clearance.mm : 0;
}

void merge_zone(std::vector<NotchZone>& zones, NotchZone zone) {
  for (std::size_t i = 0; i < zones.size();) {
    if (zones[i].t.from <= zone.t.to && zone.t.from <= zones[i].t.to) {
      zone.t = {std::min(zones[i].t.from, zone.t.from), std::max(zones[i].t.to, zone.t.to)};
      for (int k : zones[i].blocks)
        if (std::find(zone.blocks.begin(), zone.blocks.end(), k) == zone.blocks.end())
          zone.blocks.push_back(k);
      zones.erase(zones.begin() + static_cast<std::ptrdiff_t>(i));
    } else {
      ++i;
    }
  }
  zones.push_back(std::move(zone));
}

// A notch along the whole edge would only make the piece smaller: it is not cut.
bool takes_all(const std::vector<NotchZone>& zones, const std::vector<Segment>& segments) {
  const double length = segments.back().t + segments.back().length();
  return std::any_of(zones.begin(), zones.end(), [&](const NotchZone& zone) {
    return zone.t.from <= kHair && zone.t.to >= length - kHair;
  });
}

// Stretches of an edge that face one block.
std::vector<NotchZone> zones_of(const JointBuilder& b, const Joint& joint,
                                const std::vector<Segment>& segments, int block) {
  std::vector<NotchZone> zones;
  const BlockHere& here = b.view.blocks(joint.meets.wall)[block];
  for (const Segment& s : segments)
    for (double w : {0.0, b.scene.pieces[joint.piece].thickness}) {
      const Stretch t = facing(b, joint.meets.wall, here, s, {w, notch_margin(*joint.how)});
      if (t.from < t.to) merge_zone(zones, {{s.t + t.from, s.t + t.to}, {}, {block}});
    }
  return zones;
}

// Stretches of an edge that face blocks are the zones of its notch. At blocks along the whole edge
// the piece stops, and what stands out further is still notched for.
void add_zones(const JointBuilder& b, const std::vector<Segment>& segments, Joint& joint) {
  if (joint.meets.kind != Surface::Kind::wall) return;
  for (int k = 0; k < static_cast<int>(b.view.blocks(joint.meets.wall).size()); ++k) {
    const std::vector<NotchZone> own = zones_of(b, joint, segments, k);
    if (takes_all(own, segments))
      joint.stops.push_back(k);
    else
      for (const NotchZone& zone : own) merge_zone(joint.zones, zone);
  }
  if (!takes_all(joint.zones, segments)) return;
  for (const NotchZone& zone : joint.zones)
    joint.stops.insert(joint.stops.end(), zone.blocks.begin(), zone.blocks.end());
  joint.zones.clear();
}

// Ends of blocks as seen from the edge, each a hair to both sides.
std::vector<double> breaks_of(const JointBuilder& b, const Joint& joint,
                              const std::vector<Segment>& segments) {
  std::vector<double> breaks;
  const auto add = [&](Stretch t) {
    for (double end : {t.from, t.to})
      for (double hair : {-kHair, 0.0, kHair}) breaks.push_back(end + hair);
  };
  for (const NotchZone& zone : joint.zones) add(zone.t);
  if (joint.meets.kind != Surface::Kind::wall) return breaks;
  const double thickness = b.scene.pieces[joint.piece].thickness;
  for (const BlockHere& here : b.view.blocks(joint.meets.wall))
    for (const Segment& s : segments)
      for (double w : {0.0, thickness}) {
        const Stretch t = facing(b, joint.meets.wall, here, s, {w, 0});
        if (t.from >= t.to) continue;
        add({s.t + t.from, s.t + t.to});
        if (t.to - t.from > 2 * kInsideBlock)
          breaks.insert(breaks.end(), {s.t + t.from + kInsideBlock, s.t + t.to - kInsideBlock});
      }
  return breaks;
}

double along_of(const EdgeChoice& edge, Vec2 uv, double t) {
  const EdgeSide* side = std::get_if<EdgeSide>(&edge);
  if (!side) return t;
  return upright(*side) ? uv.y : uv.x;
}

bool in_zone(const std::vector<NotchZone>& zones, double t) {
  return std::any_of(zones.begin(), zones.end(), [&](const NotchZone& z) {
    return t > z.t.from + kHair / 2 && t < z.t.to - kHair / 2;
  });
}

// Whether a block near the feeler has air behind it.
bool stands_off(const JointBuilder& b, const Joint& joint, const Feeler& feeler) {
  return std::any_of(feeler.blocks.begin(), feeler.blocks.end(),
                     [&](int k) { return b.view.blocks(joint.meets.wall)[k].block->out_from > 0; });
}

// How far the piece reaches back from a spot of its edge; at an end of the edge a hair inside it.
double wood_behind(const Region& region, Vec2 uv, Vec2 out) {
  double most = 0;
  for (double aside : {0.0, kHair, -kHair})
    for (Stretch s : inside(region, uv + aside * left_of(out), -out))
      if (s.from < kHair) most = std::max(most, s.to);
  return most;
}

void add_edge_spot(const JointBuilder& b, Joint& joint, const Segment& s,
                   std::pair<double, bool> at) {
  const auto [t, coarse] = at;
  const Vec2 uv = s.at(t - s.t);
  const bool notched = in_zone(joint.zones, t);
  joint.spots.push_back({uv, t, along_of(joint.how->edge, uv, t), coarse, notched});
  const double thickness = b.scene.pieces[joint.piece].thickness;
  for (double w : {0.0, thickness}) {
    joint.feelers.push_back(
        feeler_for(b.site, joint.meets, b.frame, at_face(uv, w), at_face(s.out(), 0), coarse));
    if (stands_off(b, joint, joint.feelers.back()))
      joint.feelers.back().behind = wood_behind(b.scene.bodies[joint.piece].region, uv, s.out());
  }
}

// Which spots of a run the draws look at.
class Coarse {
 public:
  explicit Coarse(const Polygon& points) {
    const Polygon kept = simplified(points, kStray);
    std::size_t next = 0;
    double t = 0;
    for (std::size_t i = 0; i < points.size(); ++i) {
      if (i > 0) t += norm(points[i] - points[i - 1]);
      const bool corner = next < kept.size() && norm(kept[next] - points[i]) == 0;
      if (corner) ++next;
      if (corner || i == 0 || i + 1 == points.size()) corners_.push_back(t);
    }
  }
  /// At a corner between two lines.
  bool end(double t) {
    const auto near = std::lower_bound(corners_.begin(), corners_.end(), t - kHair);
    const bool corner = near != corners_.end() && *near < t + kHair;
    return corner || inner(t, t - last_ >= kCoarse * kStep - kHair);
  }
  /// Within a line.
  bool inner(double t, bool looked_at) {
    if (looked_at) last_ = t;
    return looked_at;
  }

 private:
  std::vector<double> corners_;  // t
  double last_ = -1e300;
};

void add_segment(const JointBuilder& b, Joint& joint, const Segment& s,
                 const std::vector<double>& breaks, Coarse& coarse) {
  std::vector<std::pair<double, bool>> ts;  // t, coarse
  const int steps = std::max(1, static_cast<int>(std::ceil(s.length() / kStep)));
  for (int i = 0; i <= steps; ++i) {
    const double t = s.t + s.length() * i / steps;
    const bool end = i == 0 || i == steps;
    ts.emplace_back(t, end ? coarse.end(t) : coarse.inner(t, i % kCoarse == 0));
  }
  for (double t : breaks)
    if (t > s.t && t < s.t + s.length()) ts.emplace_back(t, true);
  std::sort(ts.begin(), ts.end());
  for (const auto& at : ts) add_edge_spot(b, joint, s, at);
}

}  // namespace

void build_edge(const JointBuilder& b, Joint& joint) {
  const Polygon& outline = b.scene.pieces[joint.piece].drawn->outline;
  const Polygon points = run_points(run_of(joint.how->edge, outline), outline);
  const auto segments = segments_of(points);
  if (joint.how->notch) add_zones(b, segments, joint);
  const std::vector<double> breaks = breaks_of(b, joint, segments);
  Coarse coarse(points);
  for (const Segment& s : segments) add_segment(b, joint, s, breaks, coarse);
}

}  // namespace nook
