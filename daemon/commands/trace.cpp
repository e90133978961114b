#include "daemon/commands/trace.hpp"

#include <fmt/format.h>

#include "core/alarm/alarm_state.hpp"
#include "core/picture/picture.hpp"
#include "core/report/phrases.hpp"
#include "core/report/report.hpp"
#include "core/rules/catalogue.hpp"
#include "core/step.hpp"

namespace tidewright::commands {
namespace {

using namespace std::chrono_literals;
using report::words;
using room::Room;

double when_all_is_well(const Room& room, const State& state, const room::Instrument& instrument) {
  switch (instrument.quantity) {
    case room::Quantity::level:
      return room.vat ? room.vat->start_below.value_or(room.vat->enough).value / 2 : 0;
    case room::Quantity::temperature:
      return 15;
    case room::Quantity::feedback:
      return state.drives[instrument.subject].on ? 1 : 0;
    case room::Quantity::power:
      return state.drives[instrument.subject].on ? 60 : 0;
    case room::Quantity::dissolved_solids:
      return instrument.place == room::Place::feed ? 300 : 0;
    case room::Quantity::wetness:
    case room::Quantity::float_switch:
      return 0;
  }
  return 0;
}

// A room some minutes after a start: every instrument has said that all is well, and a fill runs
// where the room fills by itself.
State running(const Room& room) {
  State state;
  Effects effects;
  Instant now{24h * 365 * 50};
  const auto happen = [&](const auto& what) { step(room, state, {now, what}, effects); };
  happen(Started{.clean = true, .away = {}});
  happen(Link{.up = true});
  for (int minute = 0; minute < 10; ++minute) {
    now += 1min;
    for (std::size_t i = 0; i < room.instruments.size(); ++i) {
      const double value = when_all_is_well(room, state, room.instruments[i]);
      happen(Reading{.instrument = static_cast<room::InstrumentIndex>(i), .value = value});
    }
  }
  return state;
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

std::string trace_leak(const Room& room) {
  const auto sensor = room::find(room, room::Quantity::wetness, room::Place::floor);
  if (!sensor) return "This room has no leak sensor: nothing would notice.\n";
  const std::string it = report::instrument_words(room, *sensor);
  const State before = running(room);
  State after = before;
  Effects effects;
  step(room, after, {before.circumstances.now, Reading{.instrument = *sensor, .value = 1}},
       effects);

  Page page;
  page.line("event", it + " reports wet");
  page.line("signal", it + ": live and good, so `wet` is taken up");
  page.line("ledger", fmt::format("{} L made so far; no time has passed",
                                  report::number(after.ledger.made.value)));
  page.line("picture", "danger: " + words(room, {Why::wet, *sensor, {}}));
  trace_findings(room, before, after, page);
  page.line("procedure",
            fmt::format("{} water: {}", after.make_water.wants_water ? "still wants" : "wants no",
                        words(room, after.make_water.why)));
  trace_interlock(room, before, after, page);
  trace_alarms(before, after, page);
  trace_effects(room, after, effects, page);
  return page.text();
}

}  // namespace tidewright::commands
