// Pieces gathered from the answers that know about them.
#include "sheet/piece_view.h"

#include "sheet/elevation.h"

namespace nook {
namespace {

// The edges that holes count from decide where the dimensions start.
void take_holes(PieceView& view, const std::vector<Hole>& holes) {
  for (const Hole& hole : holes) {
    if (hole.part != view.name) continue;
    view.holes.push_back({{hole.u_mm, hole.v_mm}, number_of(hole.id), hole.probe_first});
    view.shy_of_left = hole.end == "right";
    view.shy_of_bottom = hole.edge == "top";
  }
}

}  // namespace

PieceView bench_view(const JobScene& scene, int piece) {
  const Piece& it = scene.pieces[piece];
  PieceView view;
  view.name = it.name;
  view.outline = it.drawn->outline;
  view.cutouts = it.drawn->cutouts;
  view.show = it.drawn->show;
  if (scene.drill)
    for (const WallDrill& wall : scene.drill->walls) take_holes(view, wall.holes);
  return view;
}

}  // namespace nook
