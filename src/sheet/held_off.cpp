// Boards and obstacles among what a contact, or its group, touches.
#include "sheet/held_off.h"

#include <algorithm>
#include <set>

#include "design/design.h"

namespace nook {
namespace {

using Names = std::set<std::string>;

// Of what is touched, the things on that wall: "left wall pipe", not "left wall".
Names things_on(const std::string& wall, const std::vector<std::string>& touches) {
  Names names;
  for (const std::string& name : touches)
    if (name.starts_with(wall + " ") && wall_named(name).empty()) names.insert(name);
  return names;
}

Names touched_by_group(const ContactWords& w) {
  for (const GroupFit& group : w.fit.groups)
    if (std::count(group.pieces.begin(), group.pieces.end(), w.contact.piece) > 0)
      return things_on(w.contact.meets, group.touches);
  return {};
}

std::string hold(const Names& names) {
  std::string text;
  for (const std::string& name : names) text += (text.empty() ? "the " : " and the ") + name;
  return text + (names.size() == 1 ? " holds" : " hold");
}

}  // namespace

std::string held_off_words(const ContactWords& w) {
  if (w.contact.how->notch) return "";
  const Names own = things_on(w.contact.meets, w.contact.touches), group = touched_by_group(w);
  if (!own.empty()) return hold(own) + " it off: notch it there, or end it short of that";
  if (group.empty() || !w.contact.touches.empty()) return "";
  return hold(group) + " its group off";
}

}  // namespace nook
