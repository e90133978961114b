#include <algorithm>
#include <tuple>

#include "core/rules/catalogue.hpp"
#include "daemon/panel/view.hpp"

namespace tidewright::panel {
namespace {

bool is_shown(const std::string& state) {
  return state != "normal" && state != "shelved" && state != "suppressed" &&
         state != "out_of_service";
}

}  // namespace

std::vector<Standing> standing(const room::Room& room, const State& state,
                               const report::Report& report) {
  std::vector<Standing> found;
  for (const rules::Rule* rule : rules::catalogue) {
    if (!rule->applies(room)) continue;
    const Facts alarm(report, "alarm", rule->name);
    const std::string word = alarm.text("state");
    if (!alarm || !is_shown(word)) continue;
    found.push_back({std::string(rule->name), alarm.text("title"), alarm.text("since"),
                     static_cast<int>(alarm.number("priority").value_or(3)),
                     word == "acknowledged" || word == "latched_acknowledged",
                     report::standing(room, state, rule->id),
                     static_cast<std::uint32_t>(alarm.number("occurrence").value_or(0)),
                     alarm.flag("to_acknowledge") == true, alarm.flag("latched") == true});
  }
  std::stable_sort(found.begin(), found.end(), [](const Standing& a, const Standing& b) {
    return std::tie(a.priority, a.since) < std::tie(b.priority, b.since);
  });
  return found;
}

}  // namespace tidewright::panel
