// Joints of the group with surfaces and with pieces already in, and those of such pieces with it.
#include "fit/pulls.h"

#include <algorithm>
#include <optional>

#include "fit/place.h"

namespace nook {
namespace {

// The wish that means what is met: by its own word, a part's name or a copy's.
std::optional<std::string> wish_for(const Layout& layout, int group, const std::string& met,
                                    const std::vector<int>& pieces) {
  for (const std::string& wish : layout.groups[group].tight_to)
    if (wish == met || std::any_of(pieces.begin(), pieces.end(),
                                   [&](int p) { return is_named(layout.scene.pieces[p], wish); }))
      return wish;
  return std::nullopt;
}

bool pulls(const Layout& layout, int group, const Joint& joint) {
  const bool wished = wish_for(layout, group, joint.how->meets, joint.parts).has_value();
  if (!joint.can_meet || (joint.how->by == Fitting::clear && !wished)) return false;
  if (joint.meets.kind != Surface::Kind::part) return true;
  return !joint.how->notch;
}

int target_index(std::vector<std::string>& targets, const std::string& name) {
  auto it = std::find(targets.begin(), targets.end(), name);
  if (it == targets.end()) it = targets.insert(it, name);
  return static_cast<int>(it - targets.begin());
}

}  // namespace

Pulls pulls_of(const Layout& layout, int group) {
  Pulls found{{}, layout.groups[group].tight_to};
  for (int j : layout.joints_at[group]) {
    const Joint& joint = layout.joints[j];
    if (!pulls(layout, group, joint)) continue;
    const auto parts = [&](auto which) {
      std::vector<int> chosen;
      std::copy_if(joint.parts.begin(), joint.parts.end(), std::back_inserter(chosen), which);
      return chosen;
    };
    const auto own = [&](int p) { return layout.group_of[p] == group; };
    const auto in_before = [&](int p) { return layout.group_of[p] < group; };
    const auto add = [&](const std::string& met, const std::vector<int>& pieces, bool round,
                         std::vector<int> with) {
      const std::string target = wish_for(layout, group, met, pieces).value_or(met);
      found.holds.push_back({j, target_index(found.targets, target), round, std::move(with)});
    };
    if (own(joint.piece)) {
      auto with = parts(in_before);
      if (joint.meets.kind != Surface::Kind::part || !with.empty())
        add(joint.how->meets, with, false, with);
    } else if (in_before(joint.piece)) {
      if (auto with = parts(own); !with.empty())
        add(layout.scene.pieces[joint.piece].drawn->name, {joint.piece}, true, std::move(with));
    }
  }
  return found;
}

}  // namespace nook
