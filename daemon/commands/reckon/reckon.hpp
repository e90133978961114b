// `tidewright reckon QUANTITY ...`: one number of the water, with its formula, its source and how
// sure it is. It needs no daemon, no broker and no household's file.
#pragma once

#include <functional>
#include <iosfwd>

#include "daemon/commands/reckon/typed_numbers.hpp"

namespace CLI {
class App;
}

namespace tidewright::commands::reckon {

// The answer on `out`, or why there is none on `err`; 0, 64 (EX_USAGE) or 65 (EX_DATAERR).
int reckon(const Quantity& quantity, const TypedOptions& typed, bool json, std::ostream& out,
           std::ostream& err);

std::function<int()> prepare(CLI::App& app);

}  // namespace tidewright::commands::reckon
