// Runs of numbered names, and findings with the same words.
#include "sheet/alike.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace nook {
namespace {

constexpr std::size_t kRun = 3;  // shorter runs are told name by name. Chosen

// "front slat" and 3; nothing where no number ends the name.
struct Copy {
  std::string stem;
  long number = 0;
};
std::optional<Copy> copy_of(const std::string& name) {
  const auto space = name.rfind(' ');
  if (space == std::string::npos || space + 1 == name.size() || name.size() - space > 6) return {};
  if (name.find_first_not_of("0123456789", space + 1) != std::string::npos) return {};
  return Copy{name.substr(0, space), std::stol(name.substr(space + 1))};
}

// How many names from `first` on are copies that follow each other.
std::size_t run_from(const std::vector<std::string>& names, std::size_t first) {
  std::size_t count = 1;
  for (auto last = copy_of(names[first]); last && first + count < names.size(); ++count) {
    const auto next = copy_of(names[first + count]);
    if (!next || next->stem != last->stem || next->number != last->number + 1) break;
    last = next;
  }
  return count;
}

}  // namespace

std::string names_said(const std::vector<std::string>& names, const std::string& separator) {
  std::vector<std::string> said;
  for (std::size_t i = 0; i < names.size();) {
    const std::size_t count = run_from(names, i);
    if (count >= kRun) {
      said.push_back(fmt::format("{} to {}", names[i], copy_of(names[i + count - 1])->number));
      i += count;
    } else {
      said.push_back(names[i++]);
    }
  }
  return fmt::format("{}", fmt::join(said, separator));
}

std::vector<Finding> told_once(const std::vector<Finding>& findings) {
  std::vector<Finding> told;
  std::vector<std::vector<std::string>> places;
  for (const Finding& finding : findings) {
    const auto same = std::find_if(told.begin(), told.end(), [&](const Finding& other) {
      return other.verdict == finding.verdict && other.what == finding.what &&
             other.next == finding.next;
    });
    if (same == told.end()) {
      told.push_back(finding);
      places.push_back({finding.where});
    } else {
      places[same - told.begin()].push_back(finding.where);
    }
  }
  for (std::size_t i = 0; i < told.size(); ++i) told[i].where = names_said(places[i], "; ");
  return told;
}

}  // namespace nook
