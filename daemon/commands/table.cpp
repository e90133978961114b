#include "daemon/commands/table.hpp"

#include <array>

#include "daemon/commands/ask.hpp"
#include "daemon/commands/check.hpp"
#include "daemon/commands/explain.hpp"
#include "daemon/commands/list.hpp"
#include "daemon/commands/reckon/reckon.hpp"
#include "daemon/commands/rehearse.hpp"
#include "daemon/commands/replay.hpp"
#include "daemon/commands/run.hpp"

namespace tidewright::commands {
namespace {

constexpr std::array rows{
    Row{"run", "Runs the daemon", "tidewright run --config minimal.toml --state ./state",
        prepare_run},
    Row{"ask", "Asks the running daemon to do something", "tidewright ask reset leak --who ann",
        prepare_ask},
    Row{"tell", "Tells the running daemon what was done",
        "tidewright tell measured product_tds 0 --who ann", prepare_tell},
    Row{"check", "Reads a household's file: what is wrong, what is protected and what is not",
        "tidewright check minimal.toml", prepare_check},
    Row{"explain", "An alarm's whole record", "tidewright explain leak", prepare_explain},
    Row{"list", "What there is: alarms, interlocks, keys, quantities, topics, schema",
        "tidewright list alarms", prepare_list},
    Row{"reckon", "Reckons one number of the water, with its source and how sure it is",
        "tidewright reckon dose --volume-l 100 --temperature-c 25 --practical-salinity 35",
        reckon::prepare},
    Row{"replay", "Lives a recorded night through again, and says why",
        "tidewright replay ./state/journal.db", prepare_replay},
    Row{"rehearse", "Lives through bad days with a household's file, and says what came of them",
        "tidewright rehearse --config minimal.toml --days 3", prepare_rehearse},
};

}  // namespace

std::span<const Row> table() { return rows; }

}  // namespace tidewright::commands
