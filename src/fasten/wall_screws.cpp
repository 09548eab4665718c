// Holes of one piece on one wall.
#include "fasten/wall_screws.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "fasten/hole_warnings.h"
#include "fasten/remedy.h"
#include "fasten/screw_size.h"
#include "fasten/strength.h"

namespace nook {
namespace {

std::string kind_without_figure(const std::optional<Studs>& studs) {
  if (!studs) return "nothing says what is in the wall";
  switch (studs->kind) {
    case StudKind::wood:
      return {};
    case StudKind::furring:
      return studs->depth ? "" : "nothing says how thick the furring is";
    case StudKind::steel:
      return "steel studs: the NDS gives no figure";
    case StudKind::masonry:
      return "masonry: the NDS gives no figure";
    case StudKind::unknown:
      return "nothing says that the studs are wood";
  }
  return {};
}

class ScrewSetter {
 public:
  ScrewSetter(const Hanging& h, const WallContext& c) : h_(h), context_(c), say_(h.say) {
    out_.no_figure = kind_without_figure(c.wall.studs);
    if (c.wall.studs && !c.wall.studs->wood_depth())
      out_.no_figure_advice =
          "furring is thin, usually 3/4 in: measure it and state it as `depth` of the studs, or "
          "screw into what is behind it";
    if (c.wall.studs) gravity_ = c.wall.studs->gravity.value_or(kUsualGravity);
  }

  WallScrews all() {
    if (!can_hold()) return std::move(out_);
    int used = 0;
    for (std::size_t i = 0; i < context_.studs.lines.size(); ++i) {
      const bool found = context_.studs.lines[i].found != StudReport::Found::inferred;
      used += in_stud(i) && found;
    }
    if (used < 2)
      for (const Blocking& b : context_.wall.studs->blocking) in_blocking(b);
    if (out_.holes.empty() && out_.unreachable.empty()) nowhere();
    sort_holes();
    return std::move(out_);
  }

 private:
  // Wood screws hold in wood only; other walls get no holes.
  bool can_hold() const {
    if (!context_.wall.studs) return false;
    const StudKind kind = context_.wall.studs->kind;
    return kind != StudKind::steel && kind != StudKind::masonry;
  }

  bool in_stud(std::size_t i) {
    const StudLine& line = context_.studs.lines[i];
    if (!reaches(line)) return false;
    const StudHoles found = holes_on(h_, line);
    if (found.blocked_by) leave_out(line, *found.blocked_by);
    if (found.seats.empty()) return false;
    for (const Seated& s : found.seats) {
      if (!deep_right(s)) return false;
      add(s, static_cast<int>(i), found);
    }
    return true;
  }

  void leave_out(const StudLine& line, const ServiceHit& service) {
    blocked_ = service;
    const WallFrame& frame = h_.face.wall();
    out_.left_out.push_back(
        fmt::format("the stud {} from the corner gets no screw: {} may be in it{}",
                    say_.length(frame.along(line.centre(line.z), line.z)), service.caution,
                    shallower(service)));
  }
  std::string shallower(const ServiceHit& service) const {
    if (!service.shallow_allowed) return {};
    return fmt::format("; a screw no deeper than {} in the stud would do",
                       say_.length(kServiceDepth));
  }

  // An inferred stud is worth a probe only where it is likelier there than not.
  bool reaches(const StudLine& line) const {
    constexpr double kWorthProbing = .5;  // chosen
    const Stretch piece = extent_of(h_);
    const double z = h_.face.wall_from_face(h_.ruler.at(h_.ruler.length() / 2, 0)).y;
    const double c = line.centre(z), half = line.belief.plies() * line.belief.width() / 2;
    if (c < piece.from - half || c > piece.to + half) return false;
    return line.belief.chance({z, c, c}, h_.distances.stud_edge, kLayingOut) > kWorthProbing ||
           line.found != StudReport::Found::inferred;
  }

  void in_blocking(const Blocking& b) {
    const double guess = h_.face.wall().base(b.along[0].mm, kUsualHeight, b.from_right);
    const auto z0 = h_.face.wall().z(b.height[0], guess), z1 = h_.face.wall().z(b.height[1], guess);
    if (!z0 || !z1) return;
    const double z = (*z0 + *z1) / 2;
    const double a0 = h_.face.wall().base(b.along[0].mm, z, b.from_right);
    const double a1 = h_.face.wall().base(b.along[1].mm, z, b.from_right);
    const StudHoles found = holes_in(h_, {std::min(a0, a1), std::min(*z0, *z1)},
                                     {std::max(a0, a1), std::max(*z0, *z1)});
    if (found.blocked_by) blocked_ = *found.blocked_by;
    for (const Seated& s : found.seats) {
      if (!deep_right(s)) return;
      add(s, -1, found);
      out_.in_blocking = true;
    }
  }

  // A screw must reach the wood and stay in it.
  bool deep_right(const Seated& s) {
    const auto depth = context_.wall.studs->wood_depth();
    const double length = h_.fastening.screw.length.mm;
    if (s.embedment <= 0)
      return refuse(
          {h_.piece.name, fmt::format("a {} screw does not reach the stud", say_.length(length)),
           "use one of " +
               say_.screw(say_.sold_from(length - s.embedment + h_.distances.least_hold))});
    if (depth && s.embedment >= depth->mm)
      return refuse(
          {h_.piece.name,
           fmt::format("a {} screw comes out of the far side of the stud", say_.length(length)),
           fmt::format(
               "use one of {} at most",
               say_.screw(say_.sold_up_to(length - s.embedment + depth->mm - say_.step())))});
    return true;
  }
  bool refuse(Unreachable why) {
    for (const Unreachable& u : out_.unreachable)
      if (u.reason == why.reason) return false;
    out_.unreachable.push_back(std::move(why));
    return false;
  }

  void nowhere() {
    if (blocked_)
      refuse({h_.piece.name, "every place on its studs may reach " + blocked_->caution,
              "move the piece" + shallower(*blocked_)});
    else if (is_looked_behind(h_, context_.studs))
      refuse(no_stud_reason(h_, context_.studs));
    else
      out_.untold = no_stud_known(h_, context_.wall.name);
  }

  void add(const Seated& s, int line, const StudHoles& on_stud) {
    Hole hole;
    hole.part = h_.piece.name;
    if (line >= 0) hole.stud = context_.report_index(line, s.at);
    place(hole, s);
    bore(hole);
    hole.edge_distance_mm = s.edge_distance;
    hole.embedment_mm = s.embedment;
    hole.hit_chance = s.chance;
    hole.shim_mm = s.shim;
    hole.sure = s.chance >= h_.sure;
    hole.proved = line >= 0 && proved_at(context_.studs.lines[line], s.at.y);
    hole.probe_first = !hole.sure && !hole.proved;
    const bool inferred =
        line >= 0 && context_.studs.lines[line].found == StudReport::Found::inferred;
    hole.warnings = warnings_at({h_, s, on_stud, inferred, hole.proved});
    out_.holes.push_back(std::move(hole));
    out_.seats.push_back(s);
  }

  // To look again at a height where nails found both edges tells nothing new.
  static bool proved_at(const StudLine& line, double z) {
    constexpr double kSameHeight = 100;  // mm; a stud leans 0.3 mm over it. Chosen
    return line.by_nail && std::abs(line.z - z) < kSameHeight;
  }

  // Where it is, on the wall and on the piece.
  void place(Hole& hole, const Seated& s) const {
    const WallFrame& frame = h_.face.wall();
    hole.along_mm = frame.along(s.at.x, s.at.y);
    hole.height_mm = s.at.y - frame.floor_z(s.at.x);
    if (context_.room.line_z) hole.from_line_mm = s.at.y - *context_.room.line_z;
    if (context_.datum) {
      const StudLine& datum = context_.studs.lines[*context_.datum];
      hole.from_datum_mm = s.at.x - datum.centre(datum.z);
    }
    hole.u_mm = s.uv.x;
    hole.v_mm = s.uv.y;
    hole.end = h_.ruler.end();
    hole.from_end_mm = s.from_end;
    hole.edge = h_.ruler.edge();
    hole.from_edge_mm = s.from_edge;
  }

  void bore(Hole& hole) const {
    const Screw& screw = h_.fastening.screw;
    const Pilot pilot = pilot_for(screw, gravity_, h_.fastening.pull_n.has_value());
    hole.depth_mm = screw.length.mm + screw.head_below.mm;
    hole.pilot_mm = pilot.thread;
    hole.shank_pilot_mm = pilot.shank;
    hole.clearance_mm = pilot.clearance;
  }

  void sort_holes() {
    std::vector<std::size_t> order(out_.holes.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
      const Hole &x = out_.holes[a], &y = out_.holes[b];
      if (x.stud != y.stud) return x.along_mm < y.along_mm;
      return x.from_edge_mm < y.from_edge_mm;
    });
    WallScrews sorted = out_;
    for (std::size_t i = 0; i < order.size(); ++i) {
      sorted.holes[i] = out_.holes[order[i]];
      sorted.seats[i] = out_.seats[order[i]];
    }
    out_ = std::move(sorted);
  }

  const Hanging& h_;
  const WallContext& context_;
  const Saying& say_;
  double gravity_ = kUsualGravity;
  std::optional<ServiceHit> blocked_;
  WallScrews out_;
};

}  // namespace

WallScrews wall_screws(const Hanging& hanging, const WallContext& context) {
  return ScrewSetter(hanging, context).all();
}

}  // namespace nook
