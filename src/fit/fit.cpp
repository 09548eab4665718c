// From a room and a design to the whole answer.
#include "fit/fit.h"

#include <algorithm>
#include <memory>

#include "fit/find_clashes.h"
#include "fit/find_clearances.h"
#include "fit/find_contacts.h"
#include "fit/find_covered.h"
#include "fit/find_early.h"
#include "fit/find_floor.h"
#include "fit/find_movement.h"
#include "fit/find_notches.h"
#include "fit/find_open.h"
#include "fit/joint_ahead.h"

namespace nook {
namespace {

constexpr double kSettled = 0.05;  // mm; fields and zones are built anew until nothing moves more
constexpr int kRounds = 6;
constexpr double kAtRest = 0.4;  // mm, 1/64 in: what moves less is where it is told. Chosen

double apart(const Frame& a, const Frame& b) {
  double most = 0;
  for (Vec3 p : {Vec3{}, Vec3{1000, 1000, 0}})
    most = std::max(most, norm(a.room_from_piece(p) - b.room_from_piece(p)));
  return most;
}

std::vector<double> moved(const std::vector<Frame>& from, const std::vector<Frame>& to) {
  std::vector<double> by;
  for (std::size_t i = 0; i < from.size(); ++i) by.push_back(apart(from[i], to[i]));
  return by;
}

// Joints are built where the pieces stand; pieces stand where the joints let them. A piece that
// slides along what it is pushed against may never come to rest: each time it meets another
// stretch.
struct Settled {
  std::unique_ptr<Site> site;
  Layout layout;
  std::vector<double> moved;  // mm; of each piece, the last time
};
Settled settle(const FitInput& input, const Scene& scene) {
  std::vector<Frame> frames;
  for (const Piece& piece : scene.pieces) frames.push_back(piece.frame);
  for (int round = 0;; ++round) {
    auto site = std::make_unique<Site>(input.survey, input.room, input.draws);
    const int first = std::max(0, site->wall_named(input.design.corner[0] + " wall"));
    Layout layout = layout_for(scene, *site, first, frames);
    std::vector<Frame> next = place_all(layout, site->adjusted()).frames;
    const std::vector<double> by = moved(frames, next);
    const bool still = std::all_of(by.begin(), by.end(), [](double mm) { return mm < kSettled; });
    frames = std::move(next);
    if (!still && round < kRounds) continue;
    for (Joint& joint : layout.joints)
      keep_faces(joint, frames[joint.piece], standing_parts(layout, joint, frames));
    return {std::move(site), std::move(layout), by};
  }
}

constexpr double kTouch = 0.05;  // mm, chosen

// What a joint touches in the adjusted room: what it meets, or what stands on that.
void add_touched(const Trials& trials, int index, std::vector<std::string>& names) {
  const Joint& joint = trials.layout.joints[index];
  const auto& frames = trials.placings[0].frames;
  const std::vector<Standing> parts = standing_parts(trials.layout, joint, frames);
  JointAhead ahead(trials.views[0], trials.layout.site.fields(), joint, frames[joint.piece], parts);
  for (int f = 0; f < static_cast<int>(joint.feelers.size()); ++f) {
    if (!(trials.gaps[0][index][f] < kTouch)) continue;
    const auto hit = ahead.hit(f);
    if (!hit) continue;
    names.push_back(hit->block < 0
                        ? joint.how->meets
                        : trials.views[0].blocks(joint.meets.wall)[hit->block].block->name);
  }
}

// What the joints of a group touch, its own pieces left out.
std::vector<std::string> touches_of(const Trials& trials, const Assembly& group) {
  std::vector<std::string> names;
  for (int j : group.joints) {
    const Joint& joint = trials.layout.joints[j];
    const bool own = std::any_of(joint.parts.begin(), joint.parts.end(), [&](int p) {
      return trials.layout.group_of[p] == trials.layout.group_of[joint.piece];
    });
    if (!own) add_touched(trials, j, names);
  }
  std::sort(names.begin(), names.end());
  names.erase(std::unique(names.begin(), names.end()), names.end());
  return names;
}

// How far a group still moves that has not come to rest.
double still_moves(const std::vector<double>& moved, const Assembly& group) {
  double most = 0;
  for (int p : group.pieces) most = std::max(most, moved[p]);
  return most < kAtRest ? 0 : most;
}

void fill_groups(const Trials& trials, const std::vector<double>& moved, FitAnswer& answer) {
  for (std::size_t g = 0; g < trials.layout.groups.size(); ++g) {
    const Assembly& group = trials.layout.groups[g];
    const Motion& motion = trials.placings[0].placed[g];
    answer.groups.push_back({group.name, group.pieces, motion.move, in_degrees({motion.turn}),
                             touches_of(trials, group), still_moves(moved, group)});
  }
}

void fill_known(const FitInput& input, FitAnswer& answer) {
  std::vector<Body> bodies;
  for (const Piece& piece : answer.pieces) bodies.push_back(body_of(piece));
  const Scene scene{input.survey, input.design, answer.pieces, bodies};
  const Settled settled = settle(input, scene);
  const Trials trials = try_all(settled.layout, *settled.site);
  Holds holds(trials.rooms());
  answer.frames = trials.placings[0].frames;
  for (int r = 1; r < trials.rooms(); ++r)
    answer.frames_in_draws.push_back(trials.placings[r].frames);
  fill_groups(trials, settled.moved, answer);
  answer.contacts = find_contacts(trials, input.sure, holds);
  for (std::size_t j = 0; j < answer.contacts.size(); ++j)
    add_touched(trials, static_cast<int>(j), answer.contacts[j].touches);
  answer.notches = find_notches(trials, input.sure);
  answer.clashes = find_clashes(trials, answer.notches, input.sure, holds);
  answer.clearances = find_clearances(trials, answer.notches, input.sure, holds);
  answer.covered = find_covered(trials, input.sure, holds);
  if (input.shows) answer.shows = find_shows(trials, answer.contacts);
  answer.floor = find_floor(trials);
  answer.movement = find_movement(input.design, answer);
  answer.early = find_early(input.design, answer);
  answer.undecided = find_open(trials, *settled.site, answer.contacts);
  answer.chance = holds.chance();
  answer.verdict = holds.verdict(input.sure);
  for (const NotchFit& n : answer.notches)
    if (!n.ruins.empty()) answer.verdict = Verdict::does_not_fit;
  for (const GroupFit& g : answer.groups)
    if (g.still_moves_mm > 0) answer.verdict = worse(answer.verdict, Verdict::cannot_tell);
  for (const ContactFit& c : answer.contacts)
    if (c.verdict == Verdict::cannot_tell && (!c.meets_anything || c.past_mm > 0))
      answer.verdict = worse(answer.verdict, Verdict::cannot_tell);
}

void fill_unknown(const FitInput& input, FitAnswer& answer) {
  answer.known = false;
  answer.chance = 0;
  answer.verdict = Verdict::cannot_tell;
  for (const Piece& piece : answer.pieces) answer.frames.push_back(piece.frame);
  for (int c = 0; c < static_cast<int>(input.design.contacts.size()); ++c) {
    const Contact& how = input.design.contacts[c];
    for (int p : pieces_named(answer.pieces, input.design, how.part)) {
      ContactFit found;
      found.contact = c;
      found.how = &how;
      found.piece = p;
      found.part = answer.pieces[p].name;
      found.edge = how.edge_given;
      found.meets = how.meets;
      found.verdict = Verdict::cannot_tell;
      answer.contacts.push_back(std::move(found));
    }
  }
}

}  // namespace

FitAnswer fit(const FitInput& input) {
  FitAnswer answer;
  answer.pieces = pieces_of(input.design);
  input.complete ? fill_known(input, answer) : fill_unknown(input, answer);
  return answer;
}

}  // namespace nook
