#include "core/base/mutant.hpp"

#ifdef TIDEWRIGHT_MUTANTS
namespace tidewright {

Mutant mutant_made = Mutant::none;

std::uint64_t remembered_beside_state() {
  static std::uint64_t times = 0;
  return ++times;
}

}  // namespace tidewright
#endif
