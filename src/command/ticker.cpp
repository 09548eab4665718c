// Progress on standard error, over itself.
#include "command/ticker.h"

#include <unistd.h>

#include "command/output.h"

namespace nook {
namespace {

// Back to the first column, and the rest of the line away (ECMA-48: CR, EL).
const char* const kOver = "\r\x1b[K";

}  // namespace

Ticker::Ticker(const Request& request)
    : heard_(isatty(STDERR_FILENO) && !request.has("--quiet") && !request.has("--json")),
      next_(Clock::now() + std::chrono::seconds(1)) {}

Ticker::~Ticker() {
  if (shown_) complain(kOver);
}

void Ticker::tick(const std::string& words) {
  if (!heard_ || Clock::now() < next_) return;
  complain(kOver + words);
  shown_ = true;
  next_ = Clock::now() + std::chrono::milliseconds(200);
}

}  // namespace nook
