// `tidewright explain ID`: an alarm's whole record.
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

std::function<int()> prepare_explain(CLI::App& app);

}  // namespace tidewright::commands
