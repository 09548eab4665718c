// Files of any bytes: plain values, or faults that stand in the text and can be printed.
#include <algorithm>

#include "base/invariant.h"
#include "fuzz/targets.h"
#include "job/job.h"

namespace nook {
namespace {

void check(const Diagnostics& faults, std::string_view text) {
  require(!faults.empty(), "what is refused says why");
  const int lines = static_cast<int>(std::count(text.begin(), text.end(), '\n')) + 1;
  for (const Diagnostic& fault : faults) {
    require(fault.place.line >= 0 && fault.place.line <= lines, "a fault stands in its file");
    require(fault.place.column >= 0 && fault.place.width > 0, "a fault has a place in its line");
    require(!fault.what.empty() && !fault.code.empty(), "a fault says what is wrong");
    const std::string said = message(fault, text);
    require(!said.empty() && said.back() == '\n', "a message ends its line");
  }
}

template <class Read>
void feed_file(Read read, std::string_view bytes) {
  const auto file = read(bytes, "f.toml");
  if (!file) check(file.error(), bytes);
}

}  // namespace

void feed_room(std::string_view bytes) {
  feed_file(parse_room, bytes);
}
void feed_design(std::string_view bytes) {
  feed_file(parse_design, bytes);
}
void feed_pieces(std::string_view bytes) {
  feed_file(parse_pieces, bytes);
}

}  // namespace nook
