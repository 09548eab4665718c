// The names given so far in a file, and whether one is taken.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace nook {

class Names {
 public:
  /// Adds a name; its number is how many came before it. False where it was there already.
  bool add(const std::string& name) {
    const bool fresh = numbers_.try_emplace(name, static_cast<int>(all_.size())).second;
    all_.push_back(name);
    return fresh;
  }
  bool holds(std::string_view name) const { return number(name) >= 0; }
  /// The number of a name's first use; -1 where it is none.
  int number(std::string_view name) const {
    const auto found = numbers_.find(std::string(name));
    return found == numbers_.end() ? -1 : found->second;
  }
  /// As candidates for the name that was meant.
  std::vector<std::string_view> views() const { return {all_.begin(), all_.end()}; }
  const std::vector<std::string>& all() const { return all_; }
  /// Each name once, in the order of first use.
  std::vector<std::string> each() const {
    std::vector<std::string> found;
    for (const std::string& name : all_)
      if (std::find(found.begin(), found.end(), name) == found.end()) found.push_back(name);
    return found;
  }

 private:
  std::vector<std::string> all_;
  std::unordered_map<std::string, int> numbers_;
};

}  // namespace nook
