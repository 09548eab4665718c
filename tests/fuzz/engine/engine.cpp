// libFuzzer's entry: hands its bytes to the feed that NOOKFIT_FEED names.
#include <cstddef>
#include <cstdint>

#include "fuzz/targets.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  nook::NOOKFIT_FEED({reinterpret_cast<const char*>(data), size});
  return 0;
}
