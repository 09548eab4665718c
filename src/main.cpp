// Command line -> run -> exit status.
#include <malloc.h>

#include <cstdio>
#include <exception>
#include <string>
#include <vector>

#include "base/invariant.h"
#include "command/run.h"

namespace {

// One answer and the process ends: what is freed is kept for the next list of the same length
// rather than given back to the machine and asked for again, a page at a time.
void keep_memory() {
  constexpr int kMegabyte = 1 << 20;
  mallopt(M_MMAP_THRESHOLD, 64 * kMegabyte);
  mallopt(M_TRIM_THRESHOLD, 64 * kMegabyte);
  mallopt(M_TOP_PAD, kMegabyte);
}

}  // namespace

int main(int count, char** words) {
  keep_memory();
  try {
    return static_cast<int>(
        nook::run(std::vector<std::string>(words + (count > 0), words + count)));
  } catch (const nook::BrokenInvariant& fault) {
    std::fprintf(stderr, "nookfit: a fault of the program itself: %s [broken-invariant]\n",
                 fault.what());
  } catch (const std::exception& fault) {
    std::fprintf(stderr, "nookfit: %s [machine]\n", fault.what());
  }
  return static_cast<int>(nook::ExitStatus::broken);
}
