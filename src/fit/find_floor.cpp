// Gaps under feet, pressures from loads and foot areas, and who hangs while they sink.
#include "fit/find_floor.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "fit/foot.h"
#include "fit/surface_ahead.h"
#include "room/covering.h"

namespace nook {
namespace {

constexpr double kSamePressure = 0.25;  // share; chosen

// 0 where one of its feet states none: it is not known then.
double load_on(const Trials& trials, int p) {
  const Scene& scene = trials.layout.scene;
  double load = 0;
  for (const Foot& foot : scene.design.feet) {
    if (!is_named(scene.pieces[p], foot.part)) continue;
    if (!foot.load_n) return 0;
    load += *foot.load_n;
  }
  return load;
}

bool on_strip(const Trials& trials, const FootSpot& foot) {
  const auto& covering = trials.layout.scene.survey.floor.covering;
  if (!covering || !covering->tack_strip) return false;
  const Vec3 at = trials.placings[0].frames[foot.piece].room_from_piece(foot.feeler.at);
  const auto& walls = trials.views[0].shape().walls;
  return std::any_of(walls.begin(), walls.end(), [&](const WallShape& wall) {
    const Vec2 q = wall.wall_from_room(plan(at));
    return q.y < covering->tack_strip->mm && q.x > 0 && q.x < wall.length;
  });
}

// Pieces that hang on a wall and are fastened to or met by this one.
std::set<std::string> hung_neighbors(const Trials& trials, int p) {
  const Layout& layout = trials.layout;
  std::set<std::string> names;
  const auto look = [&](int a, int b) {
    const int other = a == p ? b : b == p ? a : -1;
    if (other >= 0 && layout.groups[layout.group_of[other]].height == HeightRule::level_line)
      names.insert(layout.scene.pieces[other].name);
  };
  for (const Joint& joint : layout.joints)
    for (int q : joint.parts) look(joint.piece, q);
  for (const Fastening& f : layout.scene.design.fastenings)
    for (int a : pieces_named(layout.scene.pieces, layout.scene.design, f.part))
      for (int b : pieces_named(layout.scene.pieces, layout.scene.design, f.to)) look(a, b);
  return names;
}

std::string joined(const std::set<std::string>& names) {
  std::string text;
  for (const std::string& name : names) text += (text.empty() ? "the " : ", the ") + name;
  return text;
}

std::string note_for(const FloorFit& found, const std::set<std::string>& hung) {
  if (hung.empty() || (found.squash_most_mm <= 0 && found.settles_mm <= 0)) return "";
  const char* verb = hung.size() == 1 ? "does" : "do";
  if (found.squash_most_mm > 0)
    return fmt::format(
        "It sinks and {} on the wall {} not: stand on it before it is fixed, or lengthen its foot "
        "by as much",
        joined(hung), verb);
  return fmt::format(
      "It settles and {} on the wall {} not: what joins them parts, or goes down on that side by "
      "as much; press it down before it is fixed",
      joined(hung), verb);
}

void fill_shim(const Trials& trials, int group, FloorFit& found) {
  Tally shim;
  for (int r = 0; r < trials.rooms(); ++r) {
    double widest = 0;
    SurfaceAhead floor(trials.views[r], trials.layout.site.fields(), {Surface::Kind::floor, 0},
                       trials.placings[r].frames[found.piece]);
    for (const FootSpot& foot : trials.layout.feet[group]) {
      if (foot.piece != found.piece) continue;
      widest = std::max(widest, floor.surface(foot.feeler).gap);
    }
    shim.add(r, widest);
  }
  found.shim_mm = shim.adjusted;
  found.shim_sd_mm = shim.sd();
}

bool named_foot(const Trials& trials, int p) {
  const Scene& scene = trials.layout.scene;
  return std::any_of(scene.design.feet.begin(), scene.design.feet.end(),
                     [&](const Foot& foot) { return is_named(scene.pieces[p], foot.part); });
}

void fill_squash(const Trials& trials, int group, FloorFit& found) {
  const Floor& floor = trials.layout.scene.survey.floor;
  const double load = load_on(trials, found.piece), standing_on = foot_area(trials, found.piece);
  for (const FootSpot& foot : trials.layout.feet[group])
    if (foot.piece == found.piece && on_strip(trials, foot)) found.on_tack_strip = true;
  if (!gives(floor)) return;
  const std::set<std::string> hung = hung_neighbors(trials, found.piece);
  if (named_foot(trials, found.piece)) {
    const SquashRange squash = load > 0 && standing_on > 0 ? squash_under(floor, load / standing_on)
                                                           : squash_untold(floor);
    found.squash_mm = found.on_tack_strip ? 0 : squash.likely;
    found.squash_least_mm = found.on_tack_strip ? 0 : squash.least;
    found.squash_most_mm = squash.most;
  } else if (!hung.empty()) {
    found.settles_mm = squash_untold(floor).most;
  }
  found.note = note_for(found, hung);
}

void fill_foot(const Trials& trials, FloorFit& found) {
  const FootCut cut = foot_cut(trials, found.piece);
  found.foot_deg = cut.across_deg;
  found.foot_bevel_deg = cut.through_deg;
  found.foot_mm = cut.longer_mm;
}

}  // namespace

SquashRange squash_untold(const Floor& floor) {
  double tested = 0;
  for (const Squash& test : floor.squash) tested = std::max(tested, test.by.mm);
  const double thickness = floor.covering ? floor.covering->thickness.mm : 0;
  const double most = std::max(tested, thickness);
  return {tested > 0 ? tested : most / 2, 0, most};
}

SquashRange squash_under(const Floor& floor, double pressure) {
  const double thickness = floor.covering ? floor.covering->thickness.mm : 0;
  const Squash* nearest = nullptr;
  double ratio = 0;
  for (const Squash& test : floor.squash) {
    const double tested = test.load_n / (test.on[0].mm * test.on[1].mm);
    const double here = pressure / tested;
    if (!nearest || std::abs(std::log(here)) < std::abs(std::log(ratio)))
      nearest = &test, ratio = here;
  }
  if (!nearest) return {thickness / 2, 0, thickness};
  const double tested = nearest->by.mm;
  if (std::abs(ratio - 1) <= kSamePressure) return {tested, tested, tested};
  if (thickness <= tested) return {tested, std::min(tested, tested * ratio), tested};
  const double c = thickness / tested - 1;  // in tested pressures
  const double likely = thickness * ratio / (ratio + c);
  return {likely, ratio > 1 ? tested : 0, ratio > 1 ? thickness : tested};
}

std::vector<FloorFit> find_floor(const Trials& trials) {
  std::vector<FloorFit> found;
  for (std::size_t g = 0; g < trials.layout.groups.size(); ++g) {
    if (trials.layout.groups[g].above_floor > 0) continue;
    for (int p : trials.layout.groups[g].feet) {
      FloorFit piece;
      piece.piece = p;
      piece.part = trials.layout.scene.pieces[p].name;
      fill_shim(trials, static_cast<int>(g), piece);
      fill_squash(trials, static_cast<int>(g), piece);
      fill_foot(trials, piece);
      found.push_back(std::move(piece));
    }
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const FloorFit& a, const FloorFit& b) { return a.piece < b.piece; });
  return found;
}

}  // namespace nook
