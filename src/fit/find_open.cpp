// Each spot is moved a little in the adjusted room and everything is placed again.
#include "fit/find_open.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace nook {
namespace {

constexpr double kNudge = 0.2;     // mm; small against a gap, large against rounding. Chosen
constexpr double kTouch = 0.05;    // mm; chosen
constexpr double kMatters = 0.02;  // share of the nudge; what moves the gap less is left out
constexpr double kOneSided95 = 1.6448536269514722;

using Spots = std::map<int, Surface>;  // spot of the field -> its surface

void add_touching(const Trials& trials, int last_group, Spots& spots) {
  const Layout& layout = trials.layout;
  for (std::size_t j = 0; j < layout.joints.size(); ++j) {
    const Joint& joint = layout.joints[j];
    if (layout.group_of[joint.piece] > last_group) continue;
    for (std::size_t f = 0; f < joint.feelers.size(); ++f)
      if (joint.feelers[f].spot >= 0 && trials.gaps[0][j][f] < kTouch)
        spots.emplace(joint.feelers[f].spot, joint.meets);
  }
  for (int g = 0; g <= last_group; ++g)
    for (const FootSpot& foot : layout.feet[g]) {
      const Ray ray = ray_of(foot.feeler, trials.placings[0].frames[foot.piece]);
      const Surface floor{Surface::Kind::floor, 0};
      if (surface_hit(trials.views[0], layout.site.fields(), floor, foot.feeler, ray).gap < kTouch)
        spots.emplace(foot.feeler.spot, floor);
    }
}

// The spot of a joint with the widest gap, as an index of its feelers.
int widest(const Trials& trials, int joint) {
  const JointGaps& gaps = trials.gaps[0][joint];
  int best = -1;
  for (int f = 0; f < static_cast<int>(gaps.size()); ++f)
    if (!std::isnan(gaps[f]) && (best < 0 || gaps[f] > gaps[best])) best = f;
  return best;
}

double gap_at(const Trials& trials, int index, int feeler) {
  const Layout& layout = trials.layout;
  const Joint& joint = layout.joints[index];
  const Placing placing = place_all(layout, trials.views[0], true);
  const auto hit =
      joint_hit(trials.views[0], layout.site.fields(), joint, feeler, placing.frames[joint.piece],
                standing_parts(layout, joint, placing.frames));
  return hit ? hit->gap : kReach;
}

Undecided::Term term(const SurfaceField& fields, int spot, Surface surface, double weight) {
  const Vec2 at = fields.at(spot);
  Undecided::Term term;
  term.weight = weight;
  if (surface.kind == Surface::Kind::wall)
    term.spot = {SurfaceSpot::On::wall, surface.wall, at.x, at.y, {}};
  else
    term.spot = {
        surface.kind == Surface::Kind::floor ? SurfaceSpot::On::floor : SurfaceSpot::On::ceiling, 0,
        0, 0, at};
  return term;
}

int last_group(const Trials& trials, const Joint& joint) {
  int last = trials.layout.group_of[joint.piece];
  for (int p : joint.parts) last = std::max(last, trials.layout.group_of[p]);
  return last;
}

OpenFinding open_finding(const Trials& trials, Site& site, int index, const ContactFit& contact) {
  OpenFinding open;
  open.what = contact.part + ", " + contact.edge + " at the " + contact.meets;
  open.value_mm = contact.gap.most;
  open.sd_mm = contact.gap_sd;
  open.limit_mm = contact.allow;
  open.hangs_on.tolerance = std::max(kNudge, std::abs(open.value_mm - open.limit_mm) / kOneSided95);
  const Joint& joint = trials.layout.joints[index];
  const int feeler = widest(trials, index);
  Spots spots;
  add_touching(trials, last_group(trials, joint), spots);
  if (joint.feelers[feeler].spot >= 0) spots.emplace(joint.feelers[feeler].spot, joint.meets);
  const double before = gap_at(trials, index, feeler);
  for (const auto& [spot, surface] : spots) {
    site.fields().nudge(spot, kNudge);
    const double weight = (gap_at(trials, index, feeler) - before) / kNudge;
    site.fields().nudge(spot, -kNudge);
    if (std::abs(weight) > kMatters)
      open.hangs_on.terms.push_back(term(site.fields(), spot, surface, weight));
  }
  return open;
}

}  // namespace

std::vector<OpenFinding> find_open(const Trials& trials, Site& site,
                                   const std::vector<ContactFit>& contacts) {
  std::vector<OpenFinding> open;
  for (std::size_t j = 0; j < contacts.size(); ++j)
    if (contacts[j].verdict == Verdict::cannot_tell && contacts[j].meets_anything)
      open.push_back(open_finding(trials, site, static_cast<int>(j), contacts[j]));
  return open;
}

}  // namespace nook
