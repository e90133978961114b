// `tidewright list alarms|interlocks|keys|quantities|topics`: what there is, as text, JSON or
// Markdown; `list schema`: the household file's JSON Schema.
#pragma once

#include <functional>
#include <iosfwd>
#include <string>

namespace CLI {
class App;
}

namespace tidewright::commands {

enum class Form { text, json, markdown };

// 0; or 64 where there is no such list.
int list(const std::string& what, Form form, std::ostream& out, std::ostream& err);

std::function<int()> prepare_list(CLI::App& app);

}  // namespace tidewright::commands
