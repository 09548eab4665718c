// Lines, fields, cuts and joint chances of every contact.
#include "fit/find_contacts.h"

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

constexpr double kTouching = 0.1;  // mm; overlap less deep is touching. From the rule of clashes
constexpr double kRadian = 57.29577951308232;

struct Judge {
  const Trials& trials;
  const Joint& joint;
  int index;

  const JointGaps& gaps(int room) const { return trials.gaps[room][index]; }
  JointState state(int room) const {
    JointState s = state_of(trials.layout, joint, gaps(room));
    if (s.met) s.wood = wood_of(trials.layout, joint, trials.placings[room], s.deepest);
    return s;
  }
  ShowFace show() const { return trials.layout.scene.pieces[joint.piece].drawn->show; }
};

// How unlike the adjusted gaps those of a draw are: what a cut made beforehand leaves open.
double left_by_forecut(const Judge& judge, int room) {
  double low = 1e300, high = -1e300;
  for (int s = 0; s < static_cast<int>(judge.joint.spots.size()); ++s) {
    const double drawn = shown_gap(judge.gaps(room), judge.joint, judge.show(), s);
    const double adjusted = shown_gap(judge.gaps(0), judge.joint, judge.show(), s);
    if (std::isnan(drawn) || std::isnan(adjusted)) continue;
    low = std::min(low, drawn - adjusted);
    high = std::max(high, drawn - adjusted);
  }
  return std::max(0.0, high - low);
}

// The gap that the verdict is by.
double judged_gap(const Judge& judge, const JointState& state, int room, double move) {
  const Contact& how = *judge.joint.how;
  const bool cut = how.by == Fitting::taper || how.by == Fitting::scribe;
  if (!cut && how.by != Fitting::filler) return state.most;
  const double left = left_by(how, state, move).most;
  return how.shop && cut ? left + left_by_forecut(judge, room) : left;
}

bool overlap_is_cut(const Contact& how) {
  return how.by == Fitting::scribe || how.by == Fitting::taper;
}

Vec2 room_way(const Trials& trials, const Joint& joint) {
  if (joint.feelers.empty()) return {};
  return plan(ray_of(joint.feelers.front(), trials.placings[0].frames[joint.piece]).way);
}

void fill_lines(const Judge& judge, const std::vector<Tally>& at, ContactFit& found) {
  const Joint& joint = judge.joint;
  // sd at spots that the draws skip: straight between their neighbours.
  std::vector<double> sd(joint.feelers.size(), 0);
  const int faces = joint.faces();
  for (int f = 0; f < faces; ++f) {
    int before = -1;
    for (int s = 0; s < static_cast<int>(joint.spots.size()); ++s) {
      if (at[s * faces + f].drawn.empty()) continue;
      sd[s * faces + f] = at[s * faces + f].sd();
      for (int k = before + 1; before >= 0 && k < s; ++k) {
        const double share = static_cast<double>(k - before) / (s - before);
        sd[k * faces + f] = sd[before * faces + f] * (1 - share) + sd[s * faces + f] * share;
      }
      before = s;
    }
  }
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
void fill_worst_row(const Judge& judge, ContactFit& found) {
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

std::vector<Tally> tallies(const Judge& judge) {
  std::vector<Tally> at(judge.joint.feelers.size());
  for (int r = 0; r < judge.trials.rooms(); ++r)
    for (std::size_t f = 0; f < at.size(); ++f)
      if (const double gap = judge.gaps(r)[f]; !std::isnan(gap)) at[f].add(r, gap);
  return at;
}

void fill_cut(const JointState& state, const Judge& judge, ContactFit& found) {
  double length = 0;
  for (const JointSpot& spot : judge.joint.spots) length = std::max(length, spot.t);
  if (judge.joint.face)
    length = std::abs(judge.joint.spots.back().along - judge.joint.spots.front().along);
  found.taper_mm = std::abs(state.cut.slope) * length;
  found.taper_deg = std::abs(std::atan(state.cut.slope)) * kRadian;
  found.scribe_mm = std::max(0.0, state.most);
  found.wood_mm = state.wood;
  double least = 1e300;
  for (int s = 0; s < static_cast<int>(judge.joint.spots.size()); ++s) {
    const double gap = shown_gap(judge.gaps(0), judge.joint, judge.show(), s);
    if (gap < least - 1e-6) least = gap, found.touches_at = judge.joint.spots[s].along;
  }
}

ContactFit named(const Judge& judge) {
  const Scene& scene = judge.trials.layout.scene;
  ContactFit found;
  found.contact = judge.joint.contact;
  found.how = judge.joint.how;
  found.piece = judge.joint.piece;
  found.part = scene.pieces[judge.joint.piece].name;
  found.edge = judge.joint.how->edge_given;
  found.meets = judge.joint.how->meets;
  found.allow = allowed_gap(*judge.joint.how);
  return found;
}

void judge_rooms(const Judge& judge, double sure, double move, ContactFit& found, Holds& all_hold) {
  const Contact& how = *judge.joint.how;
  Tally most;
  Holds holds(judge.trials.rooms());
  for (int r = 0; r < judge.trials.rooms(); ++r) {
    const JointState state = judge.state(r);
    const double far = how.by == Fitting::taper ? state.wood : move;
    most.add(r, state.met ? state.most : kReach);
    const bool clear = overlap_is_cut(how) || state.deepest >= -kTouching;
    const double judged = state.met ? judged_gap(judge, state, r, far) : kReach;
    holds.set(r, how.by == Fitting::clear
                     ? state.met ? state.least >= found.allow - kTouching : true
                     : clear && judged <= found.allow + 1e-6);
  }
  found.gap_sd = most.sd();
  found.chance = holds.chance();
  found.verdict = verdict_of(found.chance, sure);
  all_hold.both(holds);
}

ContactFit find_contact(const Trials& trials, int index, double sure, Holds& all_hold) {
  const Judge judge{trials, trials.layout.joints[index], index};
  ContactFit found = named(judge);
  const JointState state = judge.state(0);
  found.meets_anything = judge.joint.can_meet && state.met;
  if (!found.meets_anything) {
    const bool clear = judge.joint.how->by == Fitting::clear;
    found.verdict = clear ? Verdict::fits : Verdict::does_not_fit;
    found.chance = clear ? 1 : 0;
    Holds none(trials.rooms());
    for (int r = 0; r < trials.rooms(); ++r) none.set(r, clear);
    all_hold.both(none);
    return found;
  }
  found.gap = {state.least, state.most};
  fill_lines(judge, tallies(judge), found);
  if (judge.joint.face) fill_worst_row(judge, found);
  sort_lines(found);
  fill_cut(state, judge, found);
  const RoomToMove move = room_to_move(trials, index, found.scribe_mm);
  if (overlap_is_cut(*judge.joint.how)) found.spoils = move.spoils;
  const double far = judge.joint.how->by == Fitting::taper ? state.wood : move.distance;
  const Left left = left_by(*judge.joint.how, state, far);
  found.after = {left.least, left.most};
  judge_rooms(judge, sure, move.distance, found, all_hold);
  return found;
}

}  // namespace

RoomToMove room_to_move(const Trials& trials, int index, double wish) {
  const Joint& joint = trials.layout.joints[index];
  const Vec2 way = room_way(trials, joint);
  RoomToMove room{1e9, {}};
  for (int j : trials.layout.groups[trials.layout.group_of[joint.piece]].joints) {
    const Joint& other = trials.layout.joints[j];
    if (j == index || !other.can_meet || other.meets == joint.meets) continue;
    const JointState state = state_of(trials.layout, other, trials.gaps[0][j]);
    const double closing = dot(way, room_way(trials, other));
    if (!state.met || std::abs(closing) < 0.1) continue;
    double limit = 1e9;
    if (closing < 0 && other.how->by != Fitting::clear && !overlap_is_cut(*other.how))
      limit = std::max(0.0, (allowed_gap(*other.how) - state.most) / -closing);
    if (closing > 0 && !overlap_is_cut(*other.how)) {
      const double keep = other.how->by == Fitting::clear ? other.how->gap.mm : 0;
      limit = std::max(0.0, (state.least - keep) / closing);
    }
    room.distance = std::min(room.distance, limit);
    if (limit < wish - 0.1)
      room.spoils.push_back(trials.layout.scene.pieces[other.piece].name + ", " +
                            other.how->edge_given + " at the " + other.how->meets);
  }
  return room;
}

std::vector<ContactFit> find_contacts(const Trials& trials, double sure, Holds& all_hold) {
  std::vector<ContactFit> found;
  for (int j = 0; j < static_cast<int>(trials.layout.joints.size()); ++j)
    found.push_back(find_contact(trials, j, sure, all_hold));
  return found;
}

}  // namespace nook
