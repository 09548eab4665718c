// What a group on its way home feels: gaps in plan, and how far it rises or sinks to where it
// belongs.
#include <algorithm>
#include <cmath>

#include "design/fitting.h"
#include "fit/joint_ahead.h"
#include "fit/push.h"

namespace nook {
namespace {

constexpr double kUpright = 0.1;        // a gap that changes less in plan is a matter of height
constexpr double kFar = 60;             // mm; further off nothing is run into. Chosen
constexpr double kNearestCorners = 20;  // mm behind the nearest corner of a cell; chosen

}  // namespace

double Push::rise_to_floor(const Motion& motion) const {
  const Moved moved(motion);
  std::optional<SurfaceAhead> floor;
  int piece = -1;
  double rise = -1e300;
  for (const FootSpot& foot : layout_.feet[index_]) {
    if (foot.piece != piece)
      floor.emplace(view_, layout_.site.fields(), Surface{Surface::Kind::floor, 0},
                    moved.frame(layout_.scene.pieces[piece = foot.piece].frame));
    rise = std::max(rise, group_.above_floor - floor->surface(foot.feeler).gap);
  }
  return rise > -1e299 ? rise : 0;
}

// Up or down until the first of the joints that close that way touches.
double Push::rise_to_joints(const Motion& motion, Surface::Kind kind) const {
  const Moved moved(motion);
  double down = 1e300, up = 1e300;
  for (const Hold& hold : pulls_.holds) {
    const Joint& joint = joint_of(hold);
    if (joint.meets.kind != kind) continue;
    const Frame frame = frame_of(hold, moved);
    const std::vector<Standing> parts = parts_of(hold, moved);
    JointAhead ahead(view_, layout_.site.fields(), joint, frame, parts);
    for (int f = 0; f < static_cast<int>(joint.feelers.size()); ++f) {
      const Vec3 way = way_in_room(joint.feelers[f], frame);
      if (std::abs(way.z) < 0.9) continue;
      const auto hit = ahead.hit(f);
      if (!hit) continue;
      double& least = (way.z < 0) != hold.round ? down : up;
      least = std::min(least, hit->gap - joint.how->gap.mm);
    }
  }
  if (down < 1e299) return -down;
  return up < 1e299 ? up : 0;
}

double Push::rise_from(const Motion& motion) const {
  switch (group_.height) {
    case HeightRule::floor:
      return rise_to_floor(motion);
    case HeightRule::ceiling:
      return rise_to_joints(motion, Surface::Kind::ceiling);
    case HeightRule::rests:
      return rise_to_joints(motion, Surface::Kind::part);
    case HeightRule::level_line:
      break;
  }
  // Marked from the line at the adjusted room's distance: it goes where the line is.
  const auto adjusted = layout_.site.fields().room(0).line_z, here = view_.shape().line_z;
  return adjusted && here ? *here - *adjusted - motion.move.z : 0;
}

// The gap as a straight function of the moves, unless they hardly change it.
void Push::add_gap(const Hit& hit, const Here& here, PlanGap gap,
                   std::vector<PlanGap>& gaps) const {
  const Vec2 slope = plan(hit.slope);
  for (std::size_t i = 0; i < ways_.size(); ++i) gap.slope[i] = dot(slope, ways_[i]);
  if (turn_free_) gap.slope[2] = dot(slope, turning(plan(hit.at) - here.pivot)) / rim_;
  const auto& s = gap.slope;
  if (s[0] * s[0] + s[1] * s[1] + s[2] * s[2] < kUpright * kUpright) return;
  gap.at = hit.gap;
  for (int i = 0; i < 3; ++i) gap.at -= gap.slope[i] * here.x[i];
  gaps.push_back(gap);
}

namespace {

// Of gaps that depend alike on the moves in plan only those can matter that are least or greatest
// at some turn: the corners of their hull over the turn's slope.
void thin(std::vector<PlanGap>& gaps, std::size_t from) {
  if (gaps.size() - from < 4) return;
  const auto alike = [&](const PlanGap& g) {
    return std::abs(g.slope[0] - gaps[from].slope[0]) < 1e-12 &&
           std::abs(g.slope[1] - gaps[from].slope[1]) < 1e-12;
  };
  const auto first = gaps.begin() + static_cast<std::ptrdiff_t>(from);
  if (!std::all_of(first, gaps.end(), alike)) return;
  std::sort(first, gaps.end(), [](const PlanGap& a, const PlanGap& b) {
    return a.slope[2] < b.slope[2] || (a.slope[2] == b.slope[2] && a.at < b.at);
  });
  std::vector<PlanGap> hull;
  for (int side = 0; side < 2; ++side) {
    const std::size_t base = hull.size();
    const double sign = side == 0 ? 1 : -1;
    for (auto g = first; g != gaps.end(); ++g) {
      while (hull.size() >= base + 2) {
        const PlanGap &a = hull[hull.size() - 2], &b = hull.back();
        const double turn =
            (b.slope[2] - a.slope[2]) * (g->at - b.at) - (b.at - a.at) * (g->slope[2] - b.slope[2]);
        if (sign * turn > 0) break;
        hull.pop_back();
      }
      hull.push_back(*g);
    }
  }
  gaps.erase(first, gaps.end());
  gaps.insert(gaps.end(), hull.begin(), hull.end());
}

}  // namespace

void Push::add_joints(const Here& here, std::vector<PlanGap>& gaps) const {
  for (const Hold& hold : pulls_.holds) {
    const Joint& joint = joint_of(hold);
    const Frame frame = frame_of(hold, here.moved);
    const std::vector<Standing> parts = parts_of(hold, here.moved);
    JointAhead ahead(view_, layout_.site.fields(), joint, frame, parts);
    const int body = static_cast<int>(&hold - pulls_.holds.data());
    PlanGap gap{0, {}, joint.how->gap.mm, is_cut_to_fit(joint.how->by), hold.target, body, 0};
    const std::size_t before = gaps.size();
    for (int s = 0; s < static_cast<int>(joint.spots.size()); ++s) {
      if (!asked(joint.spots[s], view_)) continue;
      for (int f = s * joint.faces(); f < (s + 1) * joint.faces(); ++f)
        if (auto hit = ahead.hit(f)) {
          if (hold.round) hit->slope = -hit->slope;
          gap.spot = f;
          add_gap(*hit, here, gap, gaps);
        }
    }
    thin(gaps, before);
  }
}

void Push::add_guards(const Here& here, std::vector<PlanGap>& gaps) const {
  PlanGap gap;
  gap.body = static_cast<int>(pulls_.holds.size());
  for (int g : layout_.guards_at[index_]) {
    const Guard& guard = layout_.guards[g];
    ++gap.body;
    SurfaceAhead ahead(view_, layout_.site.fields(), guard.surface,
                       here.moved.frame(layout_.scene.pieces[guard.piece].frame));
    const std::size_t before = gaps.size();
    for (int f = 0; f < static_cast<int>(guard.feelers.size()); ++f) {
      const auto hit = ahead.first(guard.feelers[f]);
      gap.spot = f;
      if (hit && hit->gap < kFar) add_gap(*hit, here, gap, gaps);
    }
    thin(gaps, before);
  }
}

void Push::add_partings(const Here& here, std::vector<PlanGap>& gaps) const {
  PlanGap gap;
  gap.body = static_cast<int>(pulls_.holds.size() + layout_.guards.size());
  std::vector<Hit> corners;
  for (const PartingPlane* plane : planes_) {
    ++gap.body;
    const PlaneInRoom in_room(*plane, frame_in(plane->holder, here.moved));
    const Frame other = frame_in(plane->other, here.moved);
    const Vec3 slope = own(plane->holder) ? -in_room.normal : in_room.normal;
    corners.clear();
    double nearest = 1e300;
    for (Vec3 corner : plane->corners) {
      const Vec3 at = other.room_from_piece(corner);
      corners.push_back({in_room.gap(at), slope, at, -1});
      nearest = std::min(nearest, corners.back().gap);
    }
    gap.spot = 0;
    for (const Hit& corner : corners)
      if (++gap.spot; corner.gap < std::min(nearest + kNearestCorners, kFar))
        add_gap(corner, here, gap, gaps);
  }
}

// The list is kept from one call to the next for its memory.
const std::vector<PlanGap>& Push::gaps_at(const Motion& motion, const Moves& x) const {
  thread_local std::vector<PlanGap> gaps;
  gaps.clear();
  Here here{Moved(motion), x, pivot_};
  for (std::size_t i = 0; i < ways_.size(); ++i) here.pivot = here.pivot + x[i] * ways_[i];
  add_joints(here, gaps);
  add_guards(here, gaps);
  add_partings(here, gaps);
  return gaps;
}

}  // namespace nook
