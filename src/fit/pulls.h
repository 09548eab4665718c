// What pulls a group home: the same in every room.
#pragma once

#include <string>
#include <vector>

namespace nook {

struct Layout;

/// One joint that pulls.
struct Hold {
  int joint;
  int target;              // index into Pulls::targets
  bool round;              // turned round: a piece that is already in meets this group
  std::vector<int> parts;  // of the joint's: those that are already in; round: those of the group
};

struct Pulls {
  std::vector<Hold> holds;
  std::vector<std::string> targets;  // what holds pull to, tight ones first
};

/// Of a group, by its index. Needs the layout's joints, groups, group_of and joints_at.
Pulls pulls_of(const Layout& layout, int group);

}  // namespace nook
