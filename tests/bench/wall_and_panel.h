// A bent wall of triangles and a panel in it: one input for three ways to cut the notch.
#pragma once

#include <array>
#include <vector>

#include "base/vector.h"
#include "solid/polygon.h"

namespace nook::bench {

/// Room frame: x along the wall, y out of it, z up. The panel is square to the wall: u = y, v = z,
/// w = x less kPanelAt; it stands with its left edge 20 mm inside the wall's plane.
inline constexpr double kPanelAt = 1203.7, kThickness = 18, kBehind = 200;

struct WallAndPanel {
  int across = 0, up = 0;                     // cells; 2 x across x up triangles
  std::vector<Vec3> spots;                    // (across + 1) x (up + 1), row by row from the floor
  std::vector<std::array<int, 3>> triangles;  // indices, anticlockwise as seen from the room
  Polygon outline;                            // of the panel
};

/// 25 x 20 cells make 1,000 triangles, bent by up to 12 mm.
WallAndPanel wall_and_panel(int across, int up);

/// What the convex prisms behind the triangles, cut by the panel's faces, cover seen square on.
std::vector<Polygon> notch_cells(const WallAndPanel& input);
/// The area of the panel's outline that the wall takes away, mm^2: the cells in one exact 2D union.
double notch_by_cells(const WallAndPanel& input);

/// The shadow of what a 3D Boolean says that the closed wall and the panel share.
using Shadow = std::vector<Polygon>;  // triangles in u, v; within the outline
Shadow notch_by_corefinement(const WallAndPanel& input);
Shadow notch_by_nef(const WallAndPanel& input);
double area_of(const Shadow& shadow);

/// The area that pieces cover of an outline, before anything is put on the grid of outlines.
/// Requires: anticlockwise pieces.
double exact_area(const std::vector<Polygon>& pieces, const Polygon& outline);

/// A closed solid as points and triangles, outward: the wall `kBehind` deep, or the panel.
struct Solid {
  std::vector<Vec3> points;
  std::vector<std::array<int, 3>> triangles;
};
Solid wall_solid(const WallAndPanel& input);
Solid panel_solid(const WallAndPanel& input);

}  // namespace nook::bench
