// Prisms in an isometric view, those behind painted first.
#include "sheet/assembly.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "sheet/label.h"
#include "sheet/prism.h"
#include "solid/cells.h"
#include "solid/polygon.h"

namespace nook {
namespace {

constexpr double kSharp = 0.94;  // cosine of 20 degrees: sharper bends show an edge. Chosen
constexpr int kSpots = 12;       // a face is tried on a grid of so many spots. Chosen

class Painter {
 public:
  Painter(Draft& draft, const JobScene& scene) : draft_(draft), scene_(scene) {}

  void paint(const Prism& prism) {
    piece_ = &scene_.pieces[prism.piece];
    frame_ = &scene_.frames[prism.piece];
    const bool front = dot(frame_->w, kTowardsEye) > 0;
    near_ = front ? piece_->thickness : 0;
    far_ = piece_->thickness - near_;
    for (const Cutout& cutout : piece_->drawn->cutouts) sides(cutout.outline, true);
    sides(piece_->drawn->outline, false);
    face(prism.stands_out);
  }

 private:
  Vec2 at(Vec2 p, double w) const { return isometric(frame_->room_from_piece({p.x, p.y, w})); }

  // The side faces that the eye can see; inside a cutout those that look into it.
  void sides(const Polygon& outline, bool inside) {
    const std::size_t n = outline.size();
    for (std::size_t i = 0; i < n; ++i) {
      const Vec2 a = outline[i], b = outline[(i + 1) % n], d = b - a;
      const Vec2 out = inside == (signed_area(outline) < 0) ? -left_of(d) : left_of(d);
      if (dot(out.x * frame_->u + out.y * frame_->v, kTowardsEye) <= 0) continue;
      draft_.drawing.add("pieces",
                         Patch{{{at(a, near_), at(b, near_), at(b, far_), at(a, far_)}, {}},
                               Paint::shade,
                               LineKind::none});
      draft_.drawing.add("pieces", Polyline{{at(a, far_), at(b, far_)}, false, LineKind::thin});
      for (std::size_t k : {i, (i + 1) % n})
        if (sharp(outline, k))
          draft_.drawing.add(
              "pieces",
              Polyline{{at(outline[k], near_), at(outline[k], far_)}, false, LineKind::thin});
    }
  }
  void face(bool stands_out) {
    Region region;
    for (Vec2 p : piece_->drawn->outline) region.outline.push_back(at(p, near_));
    for (const Cutout& cutout : piece_->drawn->cutouts)
      for (Polygon& hole = region.holes.emplace_back(); Vec2 p : cutout.outline)
        hole.push_back(at(p, near_));
    draft_.drawing.add("pieces",
                       Patch{region, stands_out ? Paint::wood : Paint::paper, LineKind::normal},
                       piece_->name);
    if (stands_out) hatch(draft_, "pieces", region, 60, 1.6);
  }
  static bool sharp(const Polygon& outline, std::size_t k) {
    const std::size_t n = outline.size();
    const Vec2 a = outline[k] - outline[(k + n - 1) % n], b = outline[(k + 1) % n] - outline[k];
    return dot(a, b) < kSharp * norm(a) * norm(b);
  }

  Draft& draft_;
  const JobScene& scene_;
  const Piece* piece_ = nullptr;
  const Frame* frame_ = nullptr;
  double near_ = 0, far_ = 0;
};

// The foot of each wall and the corners, as far as `reach` goes.
std::vector<std::vector<Vec2>> room_lines(const JobScene& scene, const Vec3& reach) {
  std::vector<std::vector<Vec2>> lines;
  const double top = reach.z;
  for (std::size_t k = 0; k < scene.room.walls.size(); ++k) {
    const WallShape& wall = scene.room.walls[k];
    const Vec2 ends = FacedWall(scene.room, static_cast<int>(k)).ends_at(0);
    const double far = std::min(ends.y, 1.15 * std::max(reach.x, reach.y));
    std::vector<Vec2> foot;
    for (double a : {ends.x, far}) {
      const Vec2 p = wall.room_from_wall(a, 0);
      foot.push_back(isometric({p.x, p.y, scene.room.floor.z(p)}));
    }
    lines.push_back(foot);
  }
  for (std::size_t k = 0; k + 1 < scene.room.walls.size(); ++k) {
    const Vec2 low = scene.room.corner_at(static_cast<int>(k), 0);
    const Vec2 high = scene.room.corner_at(static_cast<int>(k), top);
    lines.push_back({isometric({low.x, low.y, 0}), isometric({high.x, high.y, top})});
  }
  return lines;
}

std::vector<Prism> prisms_of(const JobScene& scene, const std::vector<InstallStep>& steps,
                             int count) {
  std::vector<Prism> prisms;
  for (int s = 0; s < count; ++s)
    for (int piece : steps[s].pieces) prisms.push_back(prism_of(scene, piece, s + 1));
  return prisms;
}

Vec3 reach_of(const std::vector<Prism>& prisms) {
  Vec3 reach{600, 600, 600};
  for (const Prism& p : prisms)
    reach = {std::max(reach.x, p.high.x), std::max(reach.y, p.high.y), std::max(reach.z, p.high.z)};
  return reach;
}

Polygon silhouette(const JobScene& scene, const Prism& prism) {
  std::vector<Vec2> points;
  for (Vec3 p : solid_of(scene.pieces[prism.piece], scene.frames[prism.piece]))
    points.push_back(isometric(p));
  return hull_of(std::move(points));
}

// A spot of the piece's near face that nothing hides, the one nearest to its middle; none where all
// is hidden.
std::optional<Vec2> open_spot(const JobScene& scene, const Prism& prism,
                              const std::vector<Polygon>& nearer) {
  const Piece& piece = scene.pieces[prism.piece];
  const Frame& frame = scene.frames[prism.piece];
  const double near = dot(frame.w, kTowardsEye) > 0 ? piece.thickness : 0;
  PageBox box;
  for (Vec2 p : piece.drawn->outline) box.take_in(p);
  std::optional<Vec2> best;
  double best_off = 1e300;
  for (int i = 1; i < kSpots; ++i)
    for (int j = 1; j < kSpots; ++j) {
      const Vec2 p{box.low.x + box.width() * i / kSpots, box.low.y + box.height() * j / kSpots};
      const Vec2 spot = isometric(frame.room_from_piece({p.x, p.y, near}));
      const double off = std::hypot(i - 0.5 * kSpots, j - 0.5 * kSpots);
      const auto hides = [&](const Polygon& hull) { return contains({hull, {}}, spot); };
      if (off >= best_off || !contains({piece.drawn->outline, {}}, p) ||
          std::any_of(nearer.begin(), nearer.end(), hides))
        continue;
      best = spot;
      best_off = off;
    }
  return best;
}

// What goes in now and cannot be seen: dashed over what hides it. The spot for its number.
Vec2 draw_hidden(Draft& draft, const JobScene& scene, const Prism& prism) {
  const Polygon hull = silhouette(scene, prism);
  draft.drawing.add("hidden", Polyline{hull, true, LineKind::dashed},
                    scene.pieces[prism.piece].name);
  return 0.5 * (prism.page.low + prism.page.high);
}

// Each part's step number, where the part can be seen or goes in now; copies share one.
void draw_numbers(Draft& draft, const JobScene& scene, const std::vector<Prism>& painted,
                  const PageBox& across) {
  std::vector<Label> labels;
  std::vector<std::string> named;
  std::vector<Polygon> nearer;
  for (auto p = painted.rbegin(); p != painted.rend(); ++p) {
    const std::string& part = scene.pieces[p->piece].drawn->name;
    std::optional<Vec2> spot = open_spot(scene, *p, nearer);
    if (!spot && p->stands_out) spot = draw_hidden(draft, scene, *p);
    nearer.push_back(silhouette(scene, *p));
    if (!spot || std::find(named.begin(), named.end(), part) != named.end()) continue;
    named.push_back(part);
    labels.push_back({std::to_string(p->step), *spot, 0, true, 1.15 * draft.canvas.text,
                      "step " + std::to_string(p->step)});
  }
  place_labels(draft, labels, {}, canvas_round(draft, across));
}

Drawing view(const JobScene& scene, const std::vector<InstallStep>& steps, int count,
             const Canvas& canvas, bool last_stands_out) {
  const std::vector<Prism> all = prisms_of(scene, steps, static_cast<int>(steps.size()));
  const auto lines = room_lines(scene, reach_of(all));
  PageBox real;
  for (const auto& line : lines)
    for (Vec2 p : line) real.take_in(p);
  for (const Prism& p : all) real.take_in(p.page);
  Draft draft = drafted(canvas, scene.rounding, real, {2, 2});
  for (const auto& line : lines)
    draft.drawing.add("room", Polyline{line, false, LineKind::dash_dot});
  std::vector<Prism> prisms = prisms_of(scene, steps, count);
  for (Prism& p : prisms) p.stands_out = last_stands_out && p.step == count;
  prisms = far_to_near(std::move(prisms));
  Painter painter(draft, scene);
  for (const Prism& p : prisms) painter.paint(p);
  draw_numbers(draft, scene, prisms, real);
  return finished(std::move(draft));
}

}  // namespace

std::vector<InstallStep> steps_of(const JobScene& scene) {
  std::vector<InstallStep> steps;
  if (scene.fit) {
    for (const GroupFit& group : scene.fit->groups) steps.push_back({group.name, group.pieces});
    return steps;
  }
  for (std::size_t i = 0; i < scene.pieces.size(); ++i) {
    const std::string& group = scene.pieces[i].drawn->group;
    auto step = std::find_if(steps.begin(), steps.end(),
                             [&](const InstallStep& s) { return s.name == group; });
    if (step == steps.end()) step = steps.insert(steps.end(), {group, {}});
    step->pieces.push_back(static_cast<int>(i));
  }
  const auto order = [&](const InstallStep& step) {
    for (const Group& g : scene.design->groups)
      if (g.name == step.name && g.order) return *g.order;
    return 1e9;
  };
  std::stable_sort(steps.begin(), steps.end(),
                   [&](const InstallStep& a, const InstallStep& b) { return order(a) < order(b); });
  return steps;
}

Drawing assembly(const JobScene& scene, int count, const Canvas& canvas) {
  const std::vector<InstallStep> steps = steps_of(scene);
  Drawing drawing = view(scene, steps, count, canvas, true);
  drawing.name = fmt::format("step-{}", count);
  drawing.title = fmt::format("Step {}: {}", count, steps[count - 1].name);
  drawing.description =
      "Hatched: what goes in now; dashed where it is hidden. Seen as one looks into the corner.";
  return drawing;
}

Drawing assembled(const JobScene& scene, const Canvas& canvas) {
  const std::vector<InstallStep> steps = steps_of(scene);
  Drawing drawing = view(scene, steps, static_cast<int>(steps.size()), canvas, false);
  drawing.name = "whole";
  drawing.title = "The whole, in the order it goes in";
  drawing.description = "Numbers in the order of installing:";
  for (std::size_t s = 0; s < steps.size(); ++s)
    drawing.description += fmt::format(" {} {}.", s + 1, steps[s].name);
  return drawing;
}

}  // namespace nook
