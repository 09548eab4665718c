// Names that a contact may meet.
#include "design/design.h"

namespace nook {

std::string wall_named(const std::string& meets) {
  static const std::string kSuffix = " wall";
  if (meets.size() <= kSuffix.size() || !meets.ends_with(kSuffix)) return {};
  return meets.substr(0, meets.size() - kSuffix.size());
}

}  // namespace nook
