// Gaps asked, the faces that show chosen, and the usual limits of the trade.
#include "fit/joint_gaps.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "fit/joint_ahead.h"
#include "fit/touching.h"

namespace nook {
namespace {

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

ShowFace show_of(const Layout& layout, const Joint& joint) {
  return layout.scene.pieces[joint.piece].drawn->show;
}

// Overlap is worse than any gap.
double worse_gap(double a, double b) {
  if (std::isnan(a)) return b;
  if (std::isnan(b)) return a;
  if (std::min(a, b) < -kTouching) return std::min(a, b);
  return std::max(a, b);
}

}  // namespace

JointGaps joint_gaps(const Layout& layout, const SiteView& view, int index,
                     const std::vector<Frame>& frames) {
  const Joint& joint = layout.joints[index];
  const std::vector<Standing> parts = standing_parts(layout, joint, frames);
  JointAhead ahead(view, layout.site.fields(), joint, frames[joint.piece], parts);
  JointGaps gaps(joint.feelers.size(), kNone);
  for (int s = 0; s < static_cast<int>(joint.spots.size()); ++s) {
    if (!asked(joint.spots[s], view)) continue;
    for (int f = s * joint.faces(); f < (s + 1) * joint.faces(); ++f)
      if (const auto hit = ahead.hit(f)) gaps[f] = hit->gap;
  }
  return gaps;
}

double shown_gap(const JointGaps& gaps, const Joint& joint, ShowFace show, int spot) {
  if (joint.face) return gaps[spot];
  const double back = gaps[2 * spot], front = gaps[2 * spot + 1];
  if (show == ShowFace::front && !std::isnan(front)) return front;
  if (show == ShowFace::back && !std::isnan(back)) return back;
  return worse_gap(back, front);
}

JointState brief_state_of(const Layout& layout, const Joint& joint, const JointGaps& gaps) {
  JointState state{false, 1e300, -1e300, 1e300, {}, 0};
  for (int s = 0; s < static_cast<int>(joint.spots.size()); ++s) {
    const double gap = shown_gap(gaps, joint, show_of(layout, joint), s);
    if (std::isnan(gap)) continue;
    state.met = true;
    state.least = std::min(state.least, gap);
    state.most = std::max(state.most, gap);
  }
  for (double gap : gaps)
    if (!std::isnan(gap)) state.deepest = std::min(state.deepest, gap);
  return state;
}

JointState state_of(const Layout& layout, const Joint& joint, const JointGaps& gaps) {
  JointState state = brief_state_of(layout, joint, gaps);
  std::vector<Vec2> run;
  for (int s = 0; s < static_cast<int>(joint.spots.size()); ++s) {
    const double gap = shown_gap(gaps, joint, show_of(layout, joint), s);
    if (!std::isnan(gap))
      run.push_back({joint.face ? joint.spots[s].along : joint.spots[s].t, gap});
  }
  if (state.met) state.cut = straight_cut(std::move(run));
  return state;
}

namespace {

// Where the group starts, turned about the design's corner as it ended up.
Motion turned_start(const Placing& placing, int group) {
  const Motion& start = placing.start[group];
  const Motion about = turned_about({0, 0}, placing.placed[group].turn - start.turn, {});
  return {placing.placed[group].turn, about.point(start.move)};
}

}  // namespace

double wood_of(const Layout& layout, const Joint& joint, const Placing& placing, double deepest) {
  const Motion from = turned_start(placing, layout.group_of[joint.piece]);
  const Frame& drawn = layout.scene.pieces[joint.piece].frame;
  double least = 1e300;
  for (std::size_t i = 0; i < joint.feelers.size(); ++i) {
    if (!joint.spots[i / joint.faces()].coarse) continue;
    const Feeler& f = joint.feelers[i];
    const Ray ray = ray_of(f, placing.frames[joint.piece]);
    const Vec3 start = from.frame(drawn).room_from_piece(f.at);
    least = std::min(least, dot(start - ray.from, ray.way));
  }
  return std::max(0.0, least) + std::max(0.0, -deepest);
}

double allowed_gap(const Contact& how) {
  if (how.by == Fitting::clear) return how.gap.mm;
  if (how.allow) return how.allow->mm;
  const double inch = kMillimetresPerInch;
  double usual = inch / 8;
  switch (how.by) {
    case Fitting::caulk:
      usual = inch / 4;
      break;
    case Fitting::filler:
      usual = inch / 16;
      break;
    case Fitting::shim:
      usual = inch / 2;
      break;
    case Fitting::trim:
      usual = how.trim ? std::max(0.0, how.trim->mm - inch / 4) : inch / 2;
      break;
    case Fitting::butt:
      usual = how.meets == "floor" ? inch * 3 / 8 : inch / 8;
      break;
    case Fitting::clear:
    case Fitting::taper:
    case Fitting::scribe:
      break;
  }
  return how.gap.mm + usual;
}

Left left_by(const Contact& how, const JointState& state, double room_to_move) {
  const double short_of = std::max(0.0, state.most - how.gap.mm - room_to_move);
  switch (how.by) {
    case Fitting::taper:
      return {0, state.cut.left + short_of};
    case Fitting::scribe:
      return {0, short_of};
    case Fitting::filler:
      return {0, state.cut.left};
    case Fitting::shim:
    case Fitting::caulk:
    case Fitting::trim:
      if (state.most <= allowed_gap(how)) return {0, 0};
      break;
    case Fitting::butt:
    case Fitting::clear:
      break;
  }
  return {state.least, state.most};
}

}  // namespace nook
