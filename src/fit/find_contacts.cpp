// Cuts and joint chances of every contact.
#include "fit/find_contacts.h"

#include <algorithm>
#include <cmath>

#include "design/fitting.h"
#include "fit/contact_lines.h"
#include "fit/easing.h"
#include "fit/joint_ahead.h"
#include "fit/room_to_move.h"
#include "fit/touching.h"

namespace nook {
namespace {

constexpr double kSameGap = 0.005;  // mm; of equally narrow spots the first is named

// How unlike the adjusted gaps those of a draw are: what a cut made beforehand leaves open.
double left_by_forecut(const JointTrials& judge, int room) {
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
double judged_gap(const JointTrials& judge, const JointState& state, int room, double move) {
  const Contact& how = *judge.joint.how;
  const bool cut = is_cut_to_fit(how.by);
  if (!cut && how.by != Fitting::filler) return state.most;
  const double left = left_by(how, state, move).most;
  return how.shop && cut ? left + left_by_forecut(judge, room) : left;
}

// The wood that may go: what the piece stands off its drawn place, as far as it may come closer,
// and what it overlaps.
double wood_within(const JointState& state, double room_to_move) {
  return std::min(state.wood, room_to_move + std::max(0.0, -state.deepest));
}

void fill_cut(const JointState& state, const JointTrials& judge, ContactFit& found) {
  double length = 0;
  for (const JointSpot& spot : judge.joint.spots) length = std::max(length, spot.t);
  if (judge.joint.face)
    length = std::abs(judge.joint.spots.back().along - judge.joint.spots.front().along);
  found.taper_mm = std::abs(state.cut.slope) * length;
  found.taper_deg = in_degrees({std::abs(std::atan(state.cut.slope))});
  found.scribe_mm = std::max(0.0, state.most);
  const auto touches = std::find_if(found.line.begin(), found.line.end(), [&](const GapPoint& p) {
    return p.gap < state.least + kSameGap;
  });
  if (touches != found.line.end()) found.touches_at = touches->at;
}

ContactFit named(const JointTrials& judge) {
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

// The way that opens the contact, in one room.
Vec3 way_off(const JointTrials& judge, int room) {
  const Frame& frame = judge.trials.placings[room].frames[judge.joint.piece];
  return -way_in_room(judge.joint.feelers.front(), frame);
}

// What it overlaps, less what scribing its other edges will let it come off.
double overlap_left(const JointTrials& judge, const JointState& state, int room) {
  const double overlap = std::max(0.0, -state.deepest);
  if (overlap <= kTouching) return overlap;
  return overlap - eased_along(judge.trials, room, judge.joint.piece, way_off(judge, room));
}

void judge_rooms(const JointTrials& judge, double sure, double move, ContactFit& found,
                 Holds& all_hold) {
  const Contact& how = *judge.joint.how;
  const bool clear_of = how.by == Fitting::clear;
  Tally told;
  Holds holds(judge.trials.rooms());
  for (int r = 0; r < judge.trials.rooms(); ++r) {
    const JointState state = judge.state(r);
    const double far = how.by == Fitting::taper ? wood_within(state, move) : move;
    told.add(r, !state.met ? kReach : clear_of ? state.deepest : state.most);
    const bool clear = is_cut_to_fit(how.by) || overlap_left(judge, state, r) <= kTouching;
    const double judged = state.met ? judged_gap(judge, state, r, far) : kReach;
    holds.set(r, clear_of ? !state.met || state.deepest >= found.allow - kClearTolerance
                          : clear && judged <= found.allow + 1e-6);
  }
  found.gap_sd = told.sd();
  found.chance = holds.chance();
  found.verdict = holds.verdict(sure);
  all_hold.both(holds);
}

// The least distance square to what is met.
double square_distance(const JointTrials& judge) {
  const Trials& trials = judge.trials;
  const Joint& joint = judge.joint;
  const auto& frames = trials.placings[0].frames;
  const std::vector<Standing> parts = standing_parts(trials.layout, joint, frames);
  JointAhead ahead(trials.views[0], trials.layout.site.fields(), joint, frames[joint.piece], parts);
  double least = kReach;
  for (int f = 0; f < static_cast<int>(joint.feelers.size()); ++f) {
    if (std::isnan(judge.gaps(0)[f])) continue;
    const auto hit = ahead.hit(f);
    if (hit) least = std::min(least, hit->gap / norm(hit->slope));
  }
  return least;
}

// How far the contact reaches past the end of a wall. `length` says how far a wall goes on, not to
// the millimeter.
double past_end(const JointTrials& judge) {
  constexpr double kFew = 12;  // mm; chosen, half an inch
  const Joint& joint = judge.joint;
  const Trials& trials = judge.trials;
  if (joint.meets.kind != Surface::Kind::wall || !trials.layout.site.ends(joint.meets.wall))
    return 0;
  const WallShape& wall = trials.views[0].shape().walls[joint.meets.wall];
  double past = 0;
  for (const Vec3 corner : joint.corners) {
    const Vec3 at = trials.placings[0].frames[joint.piece].room_from_piece(corner);
    past = std::max(past, wall.wall_from_room(plan(at)).x - wall.length);
  }
  return past > kFew ? past : 0;
}

bool ceiling_untold(const JointTrials& judge) {
  return judge.joint.meets.kind == Surface::Kind::ceiling && !judge.trials.views[0].shape().ceiling;
}

ContactFit met_nothing(const JointTrials& judge, ContactFit found, Holds& all_hold) {
  const bool well = judge.joint.how->by == Fitting::clear && !judge.joint.faces_away;
  found.meets_anything = false;
  found.faces_away = judge.joint.faces_away;
  found.verdict = well ? Verdict::fits : Verdict::does_not_fit;
  if (ceiling_untold(judge)) found.verdict = Verdict::cannot_tell;
  found.chance = found.verdict == Verdict::does_not_fit ? 0 : 1;
  Holds holds(judge.trials.rooms());
  for (int r = 0; r < judge.trials.rooms(); ++r)
    holds.set(r, found.verdict != Verdict::does_not_fit);
  all_hold.both(holds);
  return found;
}

// Asked only where the answer counts: the edge is cut, or the piece stands off its drawn place.
RoomToMove may_come_closer(const JointTrials& judge, const JointState& state, double wish) {
  const bool stands_off = state.wood > std::max(0.0, -state.deepest) + kTouching;
  if (!is_cut_to_fit(judge.joint.how->by) && !stands_off) return {};
  return room_to_move(judge.trials, judge.index, wish);
}

ContactFit find_contact(const Trials& trials, int index, double sure, Holds& all_hold) {
  const JointTrials judge(trials, index);
  ContactFit found = named(judge);
  const JointState state = judge.state(0);
  if (!judge.joint.can_meet || !state.met) return met_nothing(judge, std::move(found), all_hold);
  const Contact& how = *judge.joint.how;
  found.gap = {state.least, state.most};
  found.square_mm = square_distance(judge);
  fill_lines(judge, found);
  fill_cut(state, judge, found);
  const RoomToMove move = may_come_closer(judge, state, found.scribe_mm);
  found.wood_mm = wood_within(state, move.distance);
  if (is_cut_to_fit(how.by)) found.spoils = move.spoils;
  const Left left = left_by(how, state, how.by == Fitting::taper ? found.wood_mm : move.distance);
  found.after = {left.least, left.most};
  judge_rooms(judge, sure, move.distance, found, all_hold);
  if (!is_cut_to_fit(how.by) && state.deepest < -kTouching &&
      overlap_left(judge, state, 0) <= kTouching)
    found.eased_by = easing_edge(trials, judge.joint.piece, way_off(judge, 0));
  found.past_mm = past_end(judge);
  if (found.past_mm > 0) found.verdict = worse(found.verdict, Verdict::cannot_tell);
  return found;
}

}  // namespace

std::vector<ContactFit> find_contacts(const Trials& trials, double sure, Holds& all_hold) {
  std::vector<ContactFit> found;
  for (int j = 0; j < static_cast<int>(trials.layout.joints.size()); ++j)
    found.push_back(find_contact(trials, j, sure, all_hold));
  return found;
}

}  // namespace nook
