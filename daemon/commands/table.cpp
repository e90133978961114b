#include "daemon/commands/table.hpp"

#include <array>

#include "daemon/commands/run.hpp"

namespace tidewright::commands {
namespace {

constexpr std::array rows{
    Row{"run", "Runs the daemon", "tidewright run --config minimal.toml --state ./state",
        prepare_run},
};

}  // namespace

std::span<const Row> table() { return rows; }

}  // namespace tidewright::commands
