// Looks names up.
#include "sheet/reading_name.h"

#include <fmt/format.h>

#include <algorithm>

namespace nook {

std::string reading_name(const std::string& id, const RoomReport& report) {
  const auto found = report.names.find(id);
  return found == report.names.end() ? id : found->second;
}

std::string names_of(const std::vector<std::string>& ids, const RoomReport& report,
                     std::size_t most) {
  std::string text;
  for (std::size_t i = 0; i < std::min(ids.size(), most); ++i)
    text += (i ? "; " : "") + reading_name(ids[i], report);
  if (ids.size() > most) text += fmt::format("; and {} more", ids.size() - most);
  return text;
}

}  // namespace nook
