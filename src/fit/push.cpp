// Half-planes from the arrangement as it stands, solved and looked at again until nothing moves.
#include "fit/push.h"

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

constexpr double kStill = 0.001;      // mm; from the rule of placement
constexpr double kLongContact = 300;  // mm in plan; chosen
constexpr double kSameWay = 0.26;     // sine of 15 degrees: two walls this parallel hold one way
constexpr double kUprightFirst = 10;  // mm; heights differ by less from what is drawn. Chosen
constexpr int kRounds = 20;           // chosen; two or three are usual
constexpr double kSteep = 0.1;        // a gap changes less than this with the height. Chosen

// The mean of ways that are nearly parallel, to or fro; a unit.
Vec2 between(const std::vector<Vec2>& ways) {
  Vec2 sum;
  for (Vec2 way : ways) sum = sum + (dot(way, ways[0]) < 0 ? -1.0 : 1.0) * way;
  return (1 / norm(sum)) * sum;
}

// However its outline is drawn.
Vec3 middle_of(const Piece& piece) {
  const Box2 box = box_of(piece.drawn->outline);
  const Vec2 uv = 0.5 * (box.low + box.high);
  return piece.frame.room_from_piece({uv.x, uv.y, piece.thickness / 2});
}

}  // namespace

Push::Push(const Layout& layout, const SiteView& view, int group, const Placing& so_far)
    : layout_(layout),
      view_(view),
      group_(layout.groups[group]),
      index_(group),
      so_far_(so_far),
      pulls_(layout.pulls[group]) {
  // What is turned along something does not start turned with its wall: it would slide.
  start_ = start_motion(group_, view.shape(), layout.first_wall,
                        group_.turns_with_wall && !parallel_turn());
  lay_off();
  find_ways();
  turn_parallel();
  find_planes();
}

// What nothing holds is measured from the real corner at its height, as in the adjusted room: where
// a draw has its base lines, nobody can see.
void Push::lay_off() {
  if (view_.room() == 0) return;
  const Site::CornerSpots& corner = layout_.laid_off[index_];
  const Vec2 by =
      layout_.site.corner_offset(corner, view_.room()) - layout_.site.corner_offset(corner, 0);
  start_.move = start_.move + Vec3{by.x, by.y, 0};
}

std::vector<Standing> Push::parts_of(const Hold& hold, const Moved& moved) const {
  std::vector<Standing> parts;
  for (int p : hold.parts) parts.push_back({p, &layout_.scene.bodies[p], frame_in(p, moved)});
  return parts;
}

// The way in plan that a joint's gap closes, its piece at `frame`; zero where it closes up or down.
Vec2 Push::way_of(const Hold& hold, const Frame& frame) const {
  const Joint& joint = joint_of(hold);
  if (joint.meets.kind == Surface::Kind::wall) return view_.shape().walls[joint.meets.wall].out;
  if (joint.feelers.empty() || joint.meets.kind != Surface::Kind::part) return {};
  const Vec2 way = plan(way_in_room(joint.feelers.front(), frame));
  return norm(way) > 0.5 ? (1 / norm(way)) * way : Vec2{};
}

bool Push::turns() const {
  if (group_.may_turn && !*group_.may_turn) return false;
  if (group_.may_turn) return true;
  return std::any_of(spans_.begin(), spans_.end(), [](double s) { return s >= kLongContact; });
}

// How far the contacts with each target reach across their way, in plan.
void Push::find_spans() {
  spans_.assign(pulls_.targets.size(), 0);
  std::vector<Stretch> across(spans_.size(), {1e300, -1e300});
  const Moved start(start_);
  for (const Hold& hold : pulls_.holds) {
    const Frame frame = frame_of(hold, start);
    const Vec2 way = way_of(hold, frame);
    if (way == Vec2{}) continue;
    Stretch& all = across[hold.target];
    for (Vec3 corner : joint_of(hold).corners) {
      const double x = cross(way, plan(frame.room_from_piece(corner)));
      all = {std::min(all.from, x), std::max(all.to, x)};
    }
  }
  for (std::size_t t = 0; t < spans_.size(); ++t)
    spans_[t] = std::max(0.0, across[t].to - across[t].from);
}

void Push::find_ways() {
  find_spans();
  std::vector<Vec2> held;
  for (const std::string& target : group_.tight_to)
    if (const int wall = layout_.site.wall_named(target); wall >= 0)
      held.push_back(view_.shape().walls[wall].out);
  Vec2 sum;
  double count = 0;
  const Moved start(start_);
  for (const Hold& hold : pulls_.holds) {
    const Frame frame = frame_of(hold, start);
    const Vec2 way = way_of(hold, frame);
    if (way == Vec2{}) continue;
    held.push_back(way);
    for (const Feeler& f : joint_of(hold).feelers) sum = sum + plan(frame.room_from_piece(f.at));
    count += static_cast<double>(joint_of(hold).feelers.size());
  }
  if (count == 0)
    for (int p : group_.pieces)
      sum = sum + plan(start_.point(middle_of(layout_.scene.pieces[p]))), ++count;
  pivot_ = (1.0 / count) * sum;
  for (Vec2 way : held) {
    if (ways_.empty()) ways_.push_back(way);
    if (ways_.size() == 1 && std::abs(cross(ways_[0], way)) > kSameWay)
      ways_.push_back(left_of(ways_[0]));
  }
  // Between what holds it one way, none of them first, it goes the way between.
  if (ways_.size() == 1 && group_.tight_to.empty()) ways_[0] = between(held);
  turn_free_ = turns();
  for (double span : spans_) rim_ = std::max(rim_, span / 2);
}

// The turn that is asked for; a piece is turned along only once it is up.
std::optional<double> Push::parallel_turn() const {
  if (group_.parallel_to)
    return turn_of_wall(view_.shape(), *group_.parallel_to, layout_.first_wall);
  if (!group_.along_piece) return std::nullopt;
  const int other = layout_.group_of[*group_.along_piece];
  return other < index_ ? std::optional(so_far_.placed[other].turn) : std::nullopt;
}

// Parallel to a wall or a piece: set beforehand unless a long contact that is to be tight rules the
// turn.
void Push::turn_parallel() {
  const auto asked = parallel_turn();
  if (!asked) return;
  for (int t = 0; t < static_cast<int>(group_.tight_to.size()); ++t)
    if (spans_[t] >= kLongContact && group_.may_turn.value_or(true)) {
      turn_free_ = true;
      return;
    }
  turn_free_ = false;
  const Motion about = turned_about(pivot_, *asked, {});
  start_ = {*asked, about.point(start_.move)};
}

// Of the planes that part two cells as drawn, the one that parts them best where the group starts.
void Push::find_planes() {
  const Moved start(start_);
  const auto in_before = [&](int piece) { return layout_.group_of[piece] < index_; };
  for (int p : layout_.partings_at[index_]) {
    const Parting& parting = layout_.partings[p];
    const int still = own(parting.a) ? parting.b : parting.a;
    if ((!own(parting.a) && !own(parting.b)) || !in_before(still)) continue;
    const PartingPlane* best = nullptr;
    double furthest = -1e300;
    for (const PartingPlane& plane : parting.planes) {
      const PlaneInRoom here(plane, frame_in(plane.holder, start));
      const Frame other = frame_in(plane.other, start);
      double nearest = 1e300;
      for (Vec3 corner : plane.corners)
        nearest = std::min(nearest, here.gap(other.room_from_piece(corner)));
      // Of equal ones an upright one, so that what rests on a piece is not pushed off it.
      const double score = nearest + (std::abs(here.normal.z) > 0.9 ? kUprightFirst : 0);
      if (score > furthest) furthest = score, best = &plane;
    }
    planes_.push_back(best);
  }
}

Motion Push::motion_at(const Moves& x, double rise) const {
  Vec2 move;
  for (std::size_t i = 0; i < ways_.size(); ++i) move = move + x[i] * ways_[i];
  const Motion about = turned_about(pivot_, x[2] / rim_, {move.x, move.y, rise});
  return {start_.turn + about.turn, about.point(start_.move)};
}

Wishes Push::wishes() const {
  Wishes wishes;
  for (int t = 0; t < static_cast<int>(group_.tight_to.size()); ++t) wishes.tight.push_back(t);
  const auto asked = parallel_turn();
  if (!asked || !turn_free_) return wishes;
  wishes.parallel = true;
  wishes.parallel_at = rim_ * (*asked - start_.turn);
  return wishes;
}

// Whether any of its feelers may meet a block in one place and miss it in another.
bool Push::may_run_into_blocks() const {
  const auto blocks = [](const Feeler& f) { return !f.blocks.empty(); };
  const auto any = [&](const std::vector<Feeler>& all) {
    return std::any_of(all.begin(), all.end(), blocks);
  };
  return std::any_of(pulls_.holds.begin(), pulls_.holds.end(),
                     [&](const Hold& h) { return any(joint_of(h).feelers); }) ||
         std::any_of(layout_.guards.begin(), layout_.guards.end(),
                     [&](const Guard& g) { return own(g.piece) && any(g.feelers); });
}

// How far gaps that are straight in the moves may be wrong after a step, mm: what turning adds to
// second order, at the rim of the group and beyond it, and on the way there.
double Push::bend(const Moves& from, const Moves& to) const {
  constexpr double kBeyondRim = 2;  // pieces reach this many rims from the pivot; chosen
  const double turn = std::abs(to[2] - from[2]) / rim_;
  const double way = std::hypot(to[0] - from[0], to[1] - from[1]);
  return turn * (way + turn * kBeyondRim * rim_);
}

Motion Push::home(const Moves& guess, StopsOnTheWay& stops) {
  Moves x = guess;
  double rise = 0;
  const Wishes wanted = wishes();
  const bool still = ways_.empty() && !turn_free_;
  const bool surely_straight = view_.quick() && !may_run_into_blocks();
  for (int round = 0; round < kRounds; ++round) {
    const double next_rise = rise + rise_from(motion_at(x, rise));
    const Moves next = still ? x : pushed_home(gaps_at(motion_at(x, next_rise), x), wanted, stops);
    double change = std::abs(next_rise - rise);
    for (int i = 0; i < 3; ++i) change = std::max(change, std::abs(next[i] - x[i]));
    const bool good = surely_straight && bend(x, next) < kStill;
    x = next;
    rise = next_rise;
    if (change < kStill) break;
    if (!good) continue;
    const double last = rise_from(motion_at(x, rise));  // the floor is elsewhere there
    rise += last;
    if (std::abs(last) < kStill / kSteep) break;
  }
  moves_ = x;
  return motion_at(x, rise);
}

}  // namespace nook
