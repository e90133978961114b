// Any numbers at all for the functions of core/water: finite in, finite out. The first byte chooses
// the function, each eight that follow are a number.
#include "tests/support/numbers.hpp"

#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <vector>

namespace {

using namespace tidewright::support;

const NumberFunction& chosen(std::size_t number) {
  static const std::vector<NumberFunction> all = [] {
    std::vector<NumberFunction> gathered;
    for (const auto part : all_functions()) {
      gathered.insert(gathered.end(), part.begin(), part.end());
    }
    return gathered;
  }();
  return all[number % all.size()];
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const NumberFunction& function = chosen(data[0]);
  Numbers in{};
  std::memcpy(in.data(), data + 1, std::min(size - 1, sizeof in));
  for (double& one : in) {
    if (!std::isfinite(one)) one = 0;
  }
  if (function.call(in).finite) return 0;
  std::fprintf(stderr, "not finite: %.*s\n", static_cast<int>(function.name.size()),
               function.name.data());
  std::abort();
}
