#include "core/base/mutant.hpp"

#ifdef TIDEWRIGHT_MUTANTS
namespace tidewright {
Mutant mutant_made = Mutant::none;
}  // namespace tidewright
#endif
