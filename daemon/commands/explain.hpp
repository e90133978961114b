// `tidewright explain ID`: an alarm's whole record; `explain --trace ID --config FILE`: how it
// comes about in the household's own room, stage by stage.
#pragma once

#include <functional>
#include <iosfwd>
#include <string>

namespace CLI {
class App;
}

namespace tidewright::commands {

// 0; or 64 where there is no such alarm, with the names that there are on `err`.
int explain(const std::string& alarm, bool json, std::ostream& out, std::ostream& err);

// 0; 64 where there is no such alarm; 66 or 78 where the household's file cannot be had.
int explain_trace(const std::string& alarm, const std::string& config_file, std::ostream& out,
                  std::ostream& err);

std::function<int()> prepare_explain(CLI::App& app);

}  // namespace tidewright::commands
