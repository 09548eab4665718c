// The feeds by name.
#include "fuzz/targets.h"

namespace nook {

const std::vector<std::pair<std::string_view, Feed>>& feeds() {
  static const std::vector<std::pair<std::string_view, Feed>> all = {
      {"notation", feed_notation},
      {"room", feed_room},
      {"design", feed_design},
      {"pieces", feed_pieces},
      {"command_line", feed_command_line},
  };
  return all;
}

}  // namespace nook
