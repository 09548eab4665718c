// Spreads over the draws, straight between the spots that the draws look at.
#include "fit/contact_lines.h"

#include <algorithm>
#include <cmath>

#include "design/fitting.h"

namespace nook {
namespace {

// The sd at every feeler; at spots that the draws skip straight between their neighbors.
std::vector<double> spreads(const JointTrials& judge) {
  const Joint& joint = judge.joint;
  std::vector<double> sd(joint.feelers.size(), 0);
  const int faces = joint.faces();
  Tally at;
  for (int f = 0; f < faces; ++f) {
    int before = -1;
    for (int s = 0; s < static_cast<int>(joint.spots.size()); ++s) {
      at.drawn.clear();
      for (int r = 1; joint.spots[s].coarse && r < judge.trials.rooms(); ++r)
        if (const double gap = judge.gaps(r)[s * faces + f]; !std::isnan(gap)) at.add(r, gap);
      at.adjusted = judge.gaps(0)[s * faces + f];
      if (at.drawn.empty() || std::isnan(at.adjusted)) continue;
      sd[s * faces + f] = at.sd();
      for (int k = before + 1; before >= 0 && k < s; ++k) {
        const double share = static_cast<double>(k - before) / (s - before);
        sd[k * faces + f] = sd[before * faces + f] * (1 - share) + sd[s * faces + f] * share;
      }
      before = s;
    }
  }
  return sd;
}

void add_spots(const JointTrials& judge, const std::vector<double>& sd, ContactFit& found) {
  const Joint& joint = judge.joint;
  const JointGaps& gaps = judge.gaps(0);
  for (int s = 0; s < static_cast<int>(joint.spots.size()); ++s) {
    const JointSpot& spot = joint.spots[s];
    if (joint.face) {
      if (!std::isnan(gaps[s])) found.field.push_back({spot.uv.x, spot.uv.y, gaps[s], sd[s]});
      continue;
    }
    const double back = gaps[2 * s], front = gaps[2 * s + 1];
    if (!std::isnan(back)) found.back.push_back({spot.along, back, sd[2 * s]});
    if (!std::isnan(front)) found.front.push_back({spot.along, front, sd[2 * s + 1]});
    const double shown = shown_gap(gaps, joint, judge.show(), s);
    if (std::isnan(shown)) continue;
    found.line.push_back({spot.along, shown, shown == front ? sd[2 * s + 1] : sd[2 * s]});
    if (!std::isnan(back) && !std::isnan(front))
      found.bevel_mm = std::max(found.bevel_mm, std::abs(front - back));
  }
}

void sort_lines(ContactFit& found) {
  const auto before = [](const GapPoint& a, const GapPoint& b) { return a.at < b.at; };
  for (auto* line : {&found.line, &found.front, &found.back})
    std::stable_sort(line->begin(), line->end(), before);
}

// The row of a face with the widest gap; rows run along the longer side.
void fill_worst_row(const JointTrials& judge, ContactFit& found) {
  double worst = -1e300, row = 0;
  for (int s = 0; s < static_cast<int>(judge.joint.spots.size()); ++s) {
    const double gap = judge.gaps(0)[s];
    if (std::isnan(gap) || gap <= worst) continue;
    worst = gap;
    row = judge.joint.spots[s].t;
  }
  std::size_t next = 0;
  for (int s = 0; s < static_cast<int>(judge.joint.spots.size()); ++s) {
    if (std::isnan(judge.gaps(0)[s])) continue;
    const FieldPoint& p = found.field[next++];
    if (judge.joint.spots[s].t == row)
      found.line.push_back({judge.joint.spots[s].along, p.gap, p.sd});
  }
}

}  // namespace

JointState JointTrials::state(int room) const {
  const Fitting by = joint.how->by;
  const bool cut = is_cut_to_fit(by) || by == Fitting::filler;
  if (room > 0 && !cut) return brief_state_of(trials.layout, joint, gaps(room));
  JointState s = state_of(trials.layout, joint, gaps(room));
  if (s.met) s.wood = wood_of(trials.layout, joint, trials.placings[room], s.deepest);
  return s;
}

void fill_lines(const JointTrials& judge, ContactFit& found) {
  add_spots(judge, spreads(judge), found);
  if (judge.joint.face) fill_worst_row(judge, found);
  sort_lines(found);
}

}  // namespace nook
