// The spots of a wall's readings, on the wall as one faces it.
#include <fmt/format.h>

#include "sheet/elevation.h"
#include "sheet/wall_draft.h"

namespace nook {
namespace {

constexpr double kSpot = 0.9;  // paper mm, radius. Chosen

class Spots {
 public:
  explicit Spots(WallDraft& wall) : wall_(wall) {}

  void all() {
    for (const LevelReading& r : wall_.survey().levels) level(r);
    for (const StraightedgeReading& r : wall_.survey().straightedges) straightedge(r);
    for (const PlumbReading& r : wall_.survey().plumbs) plumb(r);
    for (const StringReading& r : wall_.survey().strings) string(r);
  }

 private:
  Vec2 at(Length along, const Height& height, bool from_right) const {
    return wall_.faced.page_from_reading(along.mm, height, from_right);
  }
  void stick(const std::vector<Vec2>& points, LineKind line, const std::string& what) {
    if (points.empty()) return;
    wall_.add("readings", Polyline{{points.front(), points.back()}, false, line}, what);
    for (Vec2 p : points) wall_.mark("readings", p, kSpot, Paint::ink, what + " spot");
    wall_.labels.push_back({what, 0.5 * (points.front() + points.back()), kSpot, true, 0, what});
  }
  void level(const LevelReading& r) {
    stick({at(r.at, r.from, r.from_right), at(r.at, r.to, r.from_right)}, LineKind::heavy, "level");
  }
  void straightedge(const StraightedgeReading& r) {
    std::vector<Vec2> points;
    for (const Station& s : r.gaps) points.push_back(at(s.at, r.height, r.from_right));
    stick(points, LineKind::heavy, "straightedge");
  }
  void plumb(const PlumbReading& r) {
    std::vector<Vec2> points;
    for (const Station& s : r.line) points.push_back(at(r.at, s.height, r.from_right));
    stick(points, LineKind::dash_dot, "plumb line");
  }
  void string(const StringReading& r) {
    std::vector<Vec2> points;
    for (const Station& s : r.line) points.push_back(at(s.at, r.height, r.from_right));
    stick(points, LineKind::dashed, "string");
  }

  WallDraft& wall_;
};

}  // namespace

Drawing where_measured(const JobScene& scene, int wall, const Canvas& canvas) {
  WallDraft draft = wall_draft(scene, wall, canvas, whole_wall(scene, wall));
  draft.draft.drawing.name += "-measured";
  draft.draft.drawing.description = fmt::format(
      "Where level, straightedge, plumb line and string were held. The corner stands at the "
      "{}-hand "
      "end.",
      draft.faced.side() < 0 ? "right" : "left");
  draw_wall(draft);
  Spots(draft).all();
  return finished(std::move(draft));
}

}  // namespace nook
