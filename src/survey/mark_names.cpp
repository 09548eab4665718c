// Corner names from wall names.
#include "survey/mark_names.h"

namespace nook {

std::string corner_name(const Survey& survey, int corner) {
  return survey.walls[corner].name + "/" + survey.walls[corner + 1].name;
}

std::optional<int> corner_named(const Survey& survey, const std::string& name) {
  for (int k = 0; k + 1 < static_cast<int>(survey.walls.size()); ++k)
    if (corner_name(survey, k) == name) return k;
  return {};
}

}  // namespace nook
