#include "daemon/commands/trace.hpp"

#include <fmt/format.h>

#include "core/alarm/alarm_state.hpp"
#include "core/report/phrases.hpp"
#include "core/report/report.hpp"
#include "core/rules/catalogue.hpp"
#include "daemon/commands/plight.hpp"

namespace tidewright::commands {
namespace {

using report::words;
using room::Room;

std::string event_words(const Room& room, const Event& event) {
  if (const auto* reading = std::get_if<Reading>(&event.what)) {
    const room::Instrument& instrument = room.instruments[reading->instrument];
    const auto unit = report::unit(instrument.quantity);
    const std::string said = unit.empty() ? (reading->value >= 0.5 ? "yes" : "no")
                                          : fmt::format("{:.1f} {}", reading->value, unit);
    return fmt::format("{} reports: {}", report::instrument_words(room, reading->instrument), said);
  }
  if (std::holds_alternative<Availability>(event.what)) return "a sensor is said to be offline";
  if (std::holds_alternative<Started>(event.what)) return "the daemon starts";
  if (std::holds_alternative<Link>(event.what)) return "the line to the broker changes";
  if (std::holds_alternative<Delivery>(event.what)) return "the broker answers a command";
  if (std::holds_alternative<Recorded>(event.what)) return "the disk answers";
  if (std::holds_alternative<Tell>(event.what)) return "a person tells what was done or counted";
  return "nothing but time has passed";
}

// The page, line by line; a stage's name stands once.
class Page {
 public:
  void line(std::string_view stage, const std::string& text) {
    text_ += fmt::format("{:<10} {}\n", stage == last_ ? "" : stage, text);
    last_ = stage;
  }
  std::string text() const { return text_; }

 private:
  std::string text_;
  std::string_view last_;
};

void trace_findings(const Room& room, const State& before, const State& after, Page& page) {
  for (const rules::Rule* rule : rules::catalogue) {
    const state::Finding& finding = after.findings[rule->id];
    if (finding.active == before.findings[rule->id].active) continue;
    page.line("rules", fmt::format("{} is found: {}", rule->name, words(room, finding.why)));
  }
}

void trace_interlock(const Room& room, const State& before, const State& after, Page& page) {
  for (const rules::Rule* rule : rules::catalogue) {
    if (after.latches[rule->id].set == before.latches[rule->id].set) continue;
    page.line("interlock", fmt::format("{} latches: only a person's reset ends it", rule->name));
  }
  for (std::size_t i = 0; i < room.actuators.size(); ++i) {
    const state::Drive& drive = after.drives[i];
    page.line("interlock", fmt::format("{}: {} -> {}, {}",
                                       report::actuator_words(room, static_cast<std::uint8_t>(i)),
                                       before.drives[i].on ? "ON" : "OFF", drive.on ? "ON" : "OFF",
                                       words(room, drive.why)));
  }
}

void trace_alarms(const State& before, const State& after, Page& page) {
  for (const rules::Rule* rule : rules::catalogue) {
    const auto name_in = [&](const State& state) {
      return alarm::name(alarm::state_of(state.alarms[rule->id], state.latches[rule->id].set));
    };
    if (name_in(before) == name_in(after)) continue;
    page.line("alarm", fmt::format("{}: {} -> {}, occurrence {}", rule->name, name_in(before),
                                   name_in(after), after.alarms[rule->id].occurrence));
  }
}

std::string effect_words(const Room& room, const Effect& effect) {
  if (const auto* command = std::get_if<Command>(&effect)) {
    return fmt::format("command: {} to {}, void after {}", command->on ? "ON" : "OFF",
                       report::actuator_words(room, command->actuator),
                       report::lasting(command->life));
  }
  if (const auto* told = std::get_if<Announcement>(&effect)) {
    return fmt::format("announcement: {}", rules::rule(told->alarm).name);
  }
  if (std::holds_alternative<Persist>(effect)) return "persist: the latch and the alarms";
  return "answer to a person";
}

void trace_effects(const Room& room, const State& after, const Effects& effects, Page& page) {
  for (const Effect& effect : effects) page.line("effects", effect_words(room, effect));
  for (const Effect& effect : effects) {
    const auto* told = std::get_if<Announcement>(&effect);
    if (told == nullptr) continue;
    const report::Message message = report::message(room, after, *told);
    page.line("report", message.title);
    page.line("report", message.text);
  }
}

}  // namespace

std::string trace(const Room& room, room::RuleId alarm) {
  const rules::Rule& rule = rules::rule(alarm);
  if (!rule.applies(room)) {
    return fmt::format("This room has nothing by which `{}` could be noticed.\n", rule.name);
  }
  const auto plight = lead_into(room, alarm);
  if (!plight) return fmt::format("`{}` does not come about in this room.\n", rule.name);
  const State& before = plight->before;
  const State& after = plight->after;

  Page page;
  page.line("event", event_words(room, plight->event));
  if (const auto* reading = std::get_if<Reading>(&plight->event.what)) {
    const state::Signal& signal = after.signals[reading->instrument];
    page.line("signal", signal.why == Why::nothing
                            ? "live and good, so it is taken up"
                            : words(room, {signal.why, reading->instrument, {}}));
  } else {
    page.line("signal", "no reading");
  }
  page.line("ledger", fmt::format("{} L made so far", report::number(after.ledger.made.value)));
  page.line("picture", words(room, after.findings[alarm].why));
  trace_findings(room, before, after, page);
  page.line("procedure",
            fmt::format("{} water: {}", after.make_water.wants_water ? "wants" : "wants no",
                        words(room, after.make_water.why)));
  trace_interlock(room, before, after, page);
  trace_alarms(before, after, page);
  trace_effects(room, after, plight->effects, page);
  return page.text();
}

}  // namespace tidewright::commands
