// Told apart by their digits.
#include "sheet/copy_names.h"

namespace nook {

std::pair<std::string, std::string> stem_and_number(const std::string& id) {
  const size_t digits = id.find_last_not_of("0123456789") + 1;
  return {id.substr(0, digits), id.substr(digits)};
}

std::string copies_named(const std::vector<std::string>& names) {
  std::string text = names.front();
  for (size_t k = 1; k < names.size(); ++k)
    text += (k + 1 < names.size() ? ", " : " and ") + stem_and_number(names[k]).second;
  return text;
}

}  // namespace nook
