// What a person has to do in the next days: three lines at most, the soonest first.
#include <algorithm>

#include "daemon/panel/html.hpp"
#include "daemon/panel/view.hpp"

namespace tidewright::panel {
namespace {

using std::chrono::sys_days;

struct Task {
  sys_days on;
  std::string text;
};

std::optional<sys_days> day_of(std::string_view iso) {
  const auto time = local_time(iso);
  if (!time) return std::nullopt;
  return std::chrono::floor<std::chrono::days>(*time);
}

void add(std::vector<Task>& tasks, std::string_view iso, std::string text) {
  if (const auto on = day_of(iso)) tasks.push_back({*on, std::move(text)});
}

// "floor: passed on 2026-03-01 (1.2 s); due on 2026-05-30": its name, and the day at its end.
void add_tests(const View& view, std::vector<Task>& tasks) {
  constexpr std::size_t date_size = 10;
  for (const std::string& test : Facts(view.report, "protection").list("proof_tests")) {
    if (test.size() < date_size) continue;
    const std::string name = test.substr(0, test.find(':'));
    add(tasks, std::string_view(test).substr(test.size() - date_size),
        view.style.said(Word::test, name));
  }
}

std::vector<Task> tasks(const View& view) {
  const Style& style = view.style;
  std::vector<Task> all;
  add(all, Facts(view.report, "resin").text("spent_at"), std::string(style.word(Word::rotate)));
  if (view.household.room.vat) {
    add(all, Facts(view.report, "vat").text("cleaning_due_at"),
        style.said(Word::clean, view.household.room.vat->id));
  }
  for (const report::Thing& thing : view.report.things) {
    if (thing.kind != "supply") continue;
    const Facts supply(&thing);
    add(all, supply.text("order_by"), style.said(Word::order, supply.text("words")));
  }
  add_tests(view, all);
  std::stable_sort(all.begin(), all.end(),
                   [](const Task& a, const Task& b) { return a.on < b.on; });
  return all;
}

std::string when(const Style& style, std::chrono::days ahead) {
  if (ahead.count() == 0) return std::string(style.word(Word::today));
  const auto count = std::to_string(std::abs(ahead.count()));
  return style.said(ahead.count() > 0 ? Word::in_days : Word::since_days, count);
}

}  // namespace

std::string due(const View& view) {
  constexpr std::size_t lines_most = 3;
  const Style& style = view.style;
  const std::string heading = element("h2", "", escaped(style.word(Word::due)));
  const std::vector<Task> all = tasks(view);
  const auto today = day_of(view.now);
  if (all.empty() || !today) {
    return heading + element("p", "", escaped(style.word(Word::nothing_due)));
  }
  std::string items;
  for (std::size_t i = 0; i < std::min(all.size(), lines_most); ++i) {
    items += element("li", "",
                     element("strong", "", escaped(all[i].text)) + " " +
                         escaped(when(style, all[i].on - *today)));
  }
  return heading + element("ul", "", items);
}

}  // namespace tidewright::panel
