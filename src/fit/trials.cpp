// Every room in turn.
#include "fit/trials.h"

namespace nook {

Trials try_all(const Layout& layout, Site& site) {
  site.fields().fill_draws();
  Trials trials{layout, {}, {}, {}};
  for (int r = 0; r < site.rooms(); ++r) {
    trials.views.push_back(site.view(r));
    const SiteView& view = trials.views.back();
    trials.placings.push_back(place_all(layout, view, r == 0 ? nullptr : &trials.placings[0]));
    const std::vector<Frame>& frames = trials.placings.back().frames;
    trials.gaps.emplace_back();
    for (int j = 0; j < static_cast<int>(layout.joints.size()); ++j)
      trials.gaps.back().push_back(joint_gaps(layout, view, j, frames));
  }
  return trials;
}

}  // namespace nook
