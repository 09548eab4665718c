// What stands on the walls beside the pieces.
#include <algorithm>
#include <array>

#include "safety/checks.h"
#include "safety/on_wall.h"
#include "safety/source.h"
#include "solid/cells.h"
#include "solid/distance.h"

namespace nook::safe {
namespace {

struct Neighbor {
  const Obstacle* obstacle;
  Patch patch;
};

std::vector<Neighbor> neighbors(const Scene& scene, std::initializer_list<ObstacleKind> kinds) {
  std::vector<Neighbor> found;
  for (std::size_t k = 0; scene.room_known() && k < scene.in.survey.walls.size(); ++k)
    for (const Obstacle& obstacle : scene.in.survey.walls[k].obstacles) {
      if (std::find(kinds.begin(), kinds.end(), obstacle.kind) == kinds.end()) continue;
      if (const auto patch = patch_of(scene, static_cast<int>(k), obstacle))
        found.push_back({&obstacle, *patch});
    }
  return found;
}

std::string name_of(const Scene& scene, const Neighbor& neighbor) {
  return neighbor.obstacle->name + " on the " + scene.in.survey.walls[neighbor.patch.wall].name +
         " wall";
}

// Level distance from a deck to the nearest spot of an obstacle.
double away(const Scene& scene, const Deck& deck, const Neighbor& neighbor) {
  double least = 1e9;
  const WallShape& wall = scene.in.room.walls[neighbor.patch.wall];
  for (int i = 0; i <= 20; ++i) {
    const double a =
        neighbor.patch.low.x + i / 20.0 * (neighbor.patch.high.x - neighbor.patch.low.x);
    const Vec3 p = wall.point(a, deck.top);
    for (int k : deck.pieces) {
      const Vec3 q = scene.bodies[k].frame.piece_from_room({p.x, p.y, 0});
      const Region& region = scene.bodies[k].region;
      const bool over = contains(region, {q.x, q.y});
      least = std::min(least, over ? 0 : border_distance(region, {q.x, q.y}));
    }
  }
  return least;
}

void judge_windows(const Scene& scene, const Deck& deck, Cautions& cautions) {
  for (const Neighbor& window : neighbors(scene, {ObstacleKind::casing, ObstacleKind::sill})) {
    if (window.patch.low.y > deck.top + mm(Of::window_reach)) continue;
    if (window.obstacle->kind == ObstacleKind::casing && window.patch.high.y < deck.top) continue;
    const Measured distance{away(scene, deck, window)};
    const double sill = window.patch.low.y - deck.top;
    cautions.judge(
        !chance_at_most(distance, mm(Of::window_reach)),
        {"window-near",
         name_of(scene, deck),
         {"The {} is {} away and starts {} {} the deck: within {} a child climbs out or falls "
          "against it. Fit a stop or a guard.",
          {name_of(scene, window), distance, Measured{std::abs(sill)},
           std::string(sill < 0 ? "below" : "above"), Of::window_reach}},
         {Of::window_reach},
         cited(From::window_fall),
         distance});
  }
}

Mesh solid_of(const Body& body) {
  Mesh mesh = prism(body.cells, body.piece->thickness);
  for (Triangle& triangle : mesh)
    for (Vec3& p : triangle) p = body.frame.room_from_piece(p);
  return mesh;
}

Mesh solid_of(const Scene& scene, const Neighbor& neighbor) {
  const WallShape& wall = scene.in.room.walls[neighbor.patch.wall];
  const Vec2 low = neighbor.patch.low, high = neighbor.patch.high;
  const double out = std::max(neighbor.obstacle->out[0].mm, neighbor.obstacle->out[1].mm);
  Mesh mesh = prism({{low, {high.x, low.y}, high, {low.x, high.y}}}, std::max(out, 1.0));
  for (Triangle& triangle : mesh)
    for (Vec3& p : triangle) {
      const Vec3 face = wall.point(p.x, p.y);
      p = face + p.z * Vec3{wall.out.x, wall.out.y, 0};
    }
  return mesh;
}

void judge_heaters(const Scene& scene, Cautions& cautions) {
  for (const Neighbor& heater : neighbors(scene, {ObstacleKind::heater})) {
    const Mesh hot = solid_of(scene, heater);
    double least = 1e9;
    std::string nearest;
    for (const Body& body : scene.bodies) {
      const double d = distance(hot, solid_of(body));
      if (d < least) least = d, nearest = body.piece->name;
    }
    if (nearest.empty()) continue;
    cautions.judge(chance_at_least({least}, mm(Of::heater_reach)),
                   {"heater-near",
                    nearest,
                    {"The {} is {} away; nothing that burns within {} of it.",
                     {name_of(scene, heater), Measured{least}, Of::heater_reach}},
                    {Of::heater_reach},
                    "",
                    Measured{least}});
  }
}

// How far the nearest corner of a piece stands before a wall.
double off_wall(const WallShape& wall, const Body& body) {
  double least = 1e9;
  for (const Vec2 p : body.region.outline)
    for (const double w : {0.0, body.piece->thickness})
      least = std::min(least, before(wall, body.frame.room_from_piece({p.x, p.y, w})));
  return least;
}

void judge_escape(const Scene& scene, Cautions& cautions) {
  const std::string source = cited(From::escape_window);
  cautions.say({"escape-window",
                "the room",
                {"Who sleeps here needs a window or a door to get out by: keep it free.", {}},
                {},
                source,
                {}});
  for (const Neighbor& window : neighbors(scene, {ObstacleKind::casing}))
    for (const Body& body : scene.bodies) {
      const Patch patch = patch_of(scene, window.patch.wall, body);
      if (!share_along(patch, window.patch) || !share_height(patch, window.patch)) continue;
      if (off_wall(scene.in.room.walls[window.patch.wall], body) > mm(Of::window_reach)) continue;
      cautions.say({"escape-window",
                    body.piece->name,
                    {"It stands before the {}: whoever sleeps here may need that way out.",
                     {name_of(scene, window)}},
                    {},
                    source,
                    {}},
                   Severity::caution);
    }
}

void judge_alarms(const Scene& scene, const Deck& deck, Cautions& cautions) {
  for (const Neighbor& alarm : neighbors(scene, {ObstacleKind::alarm})) {
    const double distance = away(scene, deck, alarm);
    if (distance < mm(Of::window_reach))
      cautions.say({"alarm-near",
                    name_of(scene, deck),
                    {"The {} is {} away: it must stay in free air and out of play.",
                     {name_of(scene, alarm), Measured{distance}}},
                    {},
                    std::string(words(Known::no_source)),
                    {}});
  }
}

}  // namespace

void surroundings(const Scene& scene, const std::vector<Deck>& decks, Cautions& cautions) {
  for (const Deck& deck : decks) {
    if (scene.audience.children) {
      judge_windows(scene, deck, cautions);
      cautions.say(
          {"cords",
           nook::safe::name_of(scene, deck),
           {"Keep cords of blinds, leads, and lamps on walls and ceiling out of reach from "
            "here, and hot lamps away from wood and bedding.",
            {}},
           {},
           std::string(words(Known::no_source)),
           {}});
    }
    judge_alarms(scene, deck, cautions);
  }
  judge_heaters(scene, cautions);
  if (scene.audience.sleeps()) judge_escape(scene, cautions);
}

}  // namespace nook::safe
