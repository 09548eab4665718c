// The verdict on a room.
#include "survey/report.h"

namespace nook {

Verdict room_verdict(const RoomReport& report) {
  const bool open = !report.suspects.empty() || !report.missing.empty();
  return open ? Verdict::cannot_tell : Verdict::fits;
}

}  // namespace nook
