// A line on the terminal while work takes its time, gone before the answer comes.
#pragma once

#include <chrono>
#include <string>

#include "command/request.h"

namespace nook {

/// Speaks only to a terminal, not with --quiet or --json, and only after the first second (chosen).
class Ticker {
 public:
  explicit Ticker(const Request& request);
  ~Ticker();
  Ticker(const Ticker&) = delete;
  Ticker& operator=(const Ticker&) = delete;

  /// Shows `words` in place of what stood there, at most five times a second (chosen).
  void tick(const std::string& words);

 private:
  using Clock = std::chrono::steady_clock;
  bool heard_, shown_ = false;
  Clock::time_point next_;
};

}  // namespace nook
