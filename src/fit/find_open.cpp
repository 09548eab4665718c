// Each spot is moved a little in the adjusted room and everything is placed again.
#include "fit/find_open.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/measured.h"
#include "fit/surface_ahead.h"

namespace nook {
namespace {

constexpr double kNudge = 0.2;     // mm; small against a gap, large against rounding. Chosen
constexpr double kTouch = 0.05;    // mm; chosen
constexpr double kMatters = 0.02;  // share of the nudge; what moves the gap less is left out

using Spots = std::map<int, Surface>;  // spot of the field -> its surface

// The adjusted room as quickly as a draw.
struct Quick {
  const Layout& layout;
  SiteView view;

  JointGaps gaps(const Placing& placing, int joint) const {
    return joint_gaps(layout, view, joint, placing.frames);
  }
};

void add_touching(const Quick& quick, const Placing& placing, Spots& spots) {
  const Layout& layout = quick.layout;
  for (std::size_t j = 0; j < layout.joints.size(); ++j) {
    const JointGaps gaps = quick.gaps(placing, static_cast<int>(j));
    for (std::size_t f = 0; f < gaps.size(); ++f)
      if (layout.joints[j].feelers[f].spot >= 0 && gaps[f] < kTouch)
        spots.emplace(layout.joints[j].feelers[f].spot, layout.joints[j].meets);
  }
  const Surface floor{Surface::Kind::floor, 0};
  for (const auto& feet : layout.feet)
    for (const FootSpot& foot : feet) {
      SurfaceAhead ahead(quick.view, layout.site.fields(), floor, placing.frames[foot.piece]);
      if (ahead.surface(foot.feeler).gap < kTouch) spots.emplace(foot.feeler.spot, floor);
    }
}

// The feeler that decides: of what is to keep clear the narrowest gap, else the widest.
int deciding(const JointGaps& gaps, bool clear) {
  int best = -1;
  for (int f = 0; f < static_cast<int>(gaps.size()); ++f)
    if (!std::isnan(gaps[f]) && (best < 0 || (gaps[f] > gaps[best]) != clear)) best = f;
  return best;
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

// One finding: the feeler that decides it, and its gap before anything is moved.
struct Watch {
  int joint = 0, feeler = 0;
  double gap = 0;
};

OpenFinding named(const ContactFit& contact) {
  OpenFinding open;
  open.what = contact.part + ", " + contact.edge + " at the " + contact.meets;
  open.value_mm = contact.how->by == Fitting::clear ? contact.gap.least : contact.gap.most;
  open.sd_mm = contact.gap_sd;
  open.limit_mm = contact.allow;
  open.hangs_on.tolerance = std::max(kNudge, std::abs(open.value_mm - open.limit_mm) / kOneSided95);
  return open;
}

}  // namespace

std::vector<OpenFinding> find_open(const Trials& trials, Site& site,
                                   const std::vector<ContactFit>& contacts) {
  const Quick quick{trials.layout, trials.views[0].made_quick()};
  const Placing still = place_all(quick.layout, quick.view);
  std::vector<OpenFinding> open;
  std::vector<Watch> watches;
  Spots spots;
  for (int j = 0; j < static_cast<int>(contacts.size()); ++j) {
    if (contacts[j].verdict != Verdict::cannot_tell || !contacts[j].meets_anything) continue;
    const JointGaps gaps = quick.gaps(still, j);
    const int feeler = deciding(gaps, contacts[j].how->by == Fitting::clear);
    if (feeler < 0) continue;
    open.push_back(named(contacts[j]));
    watches.push_back({j, feeler, gaps[feeler]});
    const Joint& joint = trials.layout.joints[j];
    if (joint.feelers[feeler].spot >= 0) spots.emplace(joint.feelers[feeler].spot, joint.meets);
  }
  if (open.empty()) return open;
  add_touching(quick, still, spots);
  for (const auto& [spot, surface] : spots) {
    site.fields().nudge(spot, kNudge);
    const Placing moved = place_all(quick.layout, quick.view, &still);
    for (std::size_t w = 0; w < watches.size(); ++w) {
      const double gap = quick.gaps(moved, watches[w].joint)[watches[w].feeler];
      const double weight = (gap - watches[w].gap) / kNudge;
      if (std::abs(weight) > kMatters)
        open[w].hangs_on.terms.push_back(term(site.fields(), spot, surface, weight));
    }
    site.fields().nudge(spot, -kNudge);
  }
  return open;
}

}  // namespace nook
