// A bent wall of triangles and a panel in it, and the notch by cells.
#include "bench/wall_and_panel.h"

#include <algorithm>
#include <cmath>

#include "solid/boolean.h"
#include "solid/cells.h"

namespace nook::bench {
namespace {

Vec3 on_panel(Vec3 p) {
  return {p.y, p.z, p.x - kPanelAt};
}

// What a convex prism covers within the panel's thickness, seen square on.
Polygon shadow(const std::array<Vec3, 6>& corners) {
  Polygon points;
  for (int i = 0; i < 6; ++i) {
    const Vec3 p = corners[i];
    if (p.z >= 0 && p.z <= kThickness) points.push_back({p.x, p.y});
    for (int j = 0; j < i; ++j) {
      const Vec3 q = corners[j];
      for (const double w : {0.0, kThickness}) {
        if ((p.z < w) == (q.z < w)) continue;
        const double t = (w - p.z) / (q.z - p.z);
        points.push_back({p.x + t * (q.x - p.x), p.y + t * (q.y - p.y)});
      }
    }
  }
  return points.size() < 3 ? Polygon{} : hull_of(std::move(points));
}

}  // namespace

WallAndPanel wall_and_panel(int across, int up) {
  WallAndPanel input;
  input.across = across;
  input.up = up;
  for (int j = 0; j <= up; ++j)
    for (int i = 0; i <= across; ++i) {
      const double x = 2500.0 * i / across, z = 2400.0 * j / up;
      input.spots.push_back(
          {x, 7 * std::sin(x / 310 + z / 470) + 5 * std::cos(z / 230 - x / 190), z});
    }
  const auto at = [&](int i, int j) { return j * (across + 1) + i; };
  for (int j = 0; j < up; ++j)
    for (int i = 0; i < across; ++i) {
      input.triangles.push_back({at(i, j), at(i, j + 1), at(i + 1, j)});
      input.triangles.push_back({at(i + 1, j), at(i, j + 1), at(i + 1, j + 1)});
    }
  input.outline = {{-20, 100}, {580, 100}, {580, 2000}, {-20, 2000}};
  return input;
}

std::vector<Polygon> notch_cells(const WallAndPanel& input) {
  std::vector<Polygon> cells;
  for (const auto& triangle : input.triangles) {
    double low = 1e300, high = -1e300;
    for (const int k : triangle) {
      low = std::min(low, input.spots[k].x);
      high = std::max(high, input.spots[k].x);
    }
    if (high < kPanelAt || low > kPanelAt + kThickness) continue;
    std::array<Vec3, 6> corners;
    for (int k = 0; k < 3; ++k) {
      const Vec3 p = input.spots[triangle[k]];
      corners[k] = on_panel(p);
      corners[k + 3] = on_panel({p.x, -kBehind, p.z});
    }
    Polygon cell = shadow(corners);
    if (cell.size() >= 3) cells.push_back(std::move(cell));
  }
  return cells;
}

double notch_by_cells(const WallAndPanel& input) {
  return area(intersect(notch_cells(input), {{input.outline, {}}}));
}

double area_of(const Shadow& shadow) {
  return area(unite(shadow));
}

Solid wall_solid(const WallAndPanel& input) {
  Solid solid{input.spots, input.triangles};
  const int n = static_cast<int>(input.spots.size()), across = input.across, up = input.up;
  for (const Vec3& p : input.spots) solid.points.push_back({p.x, -kBehind, p.z});
  for (const auto& t : input.triangles) solid.triangles.push_back({t[0] + n, t[2] + n, t[1] + n});
  const auto at = [&](int i, int j) { return j * (across + 1) + i; };
  const auto side = [&](int a, int b) {  // a to b runs along the front's border, anticlockwise
    solid.triangles.push_back({a, a + n, b});
    solid.triangles.push_back({b, a + n, b + n});
  };
  for (int i = 0; i < across; ++i) side(at(i + 1, 0), at(i, 0)), side(at(i, up), at(i + 1, up));
  for (int j = 0; j < up; ++j) side(at(0, j), at(0, j + 1)), side(at(across, j + 1), at(across, j));
  return solid;
}

Solid panel_solid(const WallAndPanel& input) {
  Solid solid;
  for (const double w : {0.0, kThickness})
    for (const Vec2 p : input.outline) solid.points.push_back({kPanelAt + w, p.x, p.y});
  solid.triangles = {{0, 2, 1}, {0, 3, 2}, {4, 5, 6}, {4, 6, 7}};
  for (int k = 0; k < 4; ++k) {
    const int next = (k + 1) % 4;
    solid.triangles.push_back({k, next, k + 4});
    solid.triangles.push_back({next, next + 4, k + 4});
  }
  return solid;
}

}  // namespace nook::bench
