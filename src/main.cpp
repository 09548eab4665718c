// Command line -> run -> exit status.
#include <cstdio>
#include <exception>
#include <string>
#include <vector>

#include "base/invariant.h"
#include "command/run.h"

int main(int count, char** words) {
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
