// One libFuzzer program a target: REHALE_FUZZ_TARGET names the function of targets.h.
#include "tests/fuzz/targets.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  rehale::fuzz::REHALE_FUZZ_TARGET({bytes, size});
  return 0;
}
