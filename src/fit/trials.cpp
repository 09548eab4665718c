// Every room in turn.
#include "fit/trials.h"

namespace nook {
namespace {

// Obstacles so near a piece in the adjusted room that a draw may bring them together, or that their
// distance is told. mm, chosen.
constexpr double kNear = 60;

std::vector<char> near_pieces(const Layout& layout, const std::vector<ObstacleSolid>& obstacles,
                              const std::vector<Frame>& frames) {
  std::vector<char> near(obstacles.size(), 0);
  for (std::size_t p = 0; p < frames.size(); ++p) {
    const CellSolid hull = solid_of(layout.scene.bodies[p], static_cast<int>(p)).hull;
    for (std::size_t b = 0; b < obstacles.size(); ++b)
      near[b] = near[b] ||
                apart(obstacles[b].solid, obstacles[b].frame, hull, frames[p]).distance < kNear;
  }
  return near;
}

}  // namespace

Trials try_all(const Layout& layout, Site& site) {
  site.fields().fill_draws();
  Trials trials{layout, {}, {}, {}, {}};
  std::vector<char> near;
  for (int r = 0; r < site.rooms(); ++r) {
    trials.views.push_back(site.view(r));
    const SiteView& view = trials.views.back();
    trials.placings.push_back(place_all(layout, view, r == 0 ? nullptr : &trials.placings[0]));
    const std::vector<Frame>& frames = trials.placings.back().frames;
    trials.obstacles.push_back(layout.obstacles.in(site, view, near));
    if (r == 0) near = near_pieces(layout, trials.obstacles[0], frames);
    trials.gaps.emplace_back();
    for (int j = 0; j < static_cast<int>(layout.joints.size()); ++j)
      trials.gaps.back().push_back(joint_gaps(layout, view, j, frames));
  }
  return trials;
}

}  // namespace nook
