#include <fmt/format.h>

#include "core/base/mutant.hpp"
#include "core/interlock/matrix.hpp"
#include "core/report/fields.hpp"
#include "core/report/phrases.hpp"
#include "core/report/things.hpp"
#include "core/rules/catalogue.hpp"

namespace tidewright::report {
namespace {

using picture::Picture;

// The alarm that holds it off, the first cause before the rest; empty if none does.
std::string tripped_by(const Picture& picture) {
  std::string name;
  for (const rules::Rule* rule : rules::catalogue) {
    const state::Latch& latch = picture.latches[rule->id];
    if (!latch.set) continue;
    if (latch.first) return std::string(rule->name);
    if (name.empty()) name = rule->name;
  }
  return name;
}

std::string feedback_why(const Picture& picture, room::ActuatorIndex i) {
  const auto feedback = room::find(picture.room, room::Quantity::feedback, i);
  if (!feedback) return "it gives no feedback";
  return words(picture.room, signal_reason(picture, *feedback));
}

// What holds it or lets it run; and what would hold it, were it not bypassed.
std::string why(const Picture& picture, room::ActuatorIndex i) {
  std::string text = words(picture.room, picture.drives[i].why);
  for (const state::Bypass& bypass : picture.bypasses.items) {
    if (picture.now >= bypass.until) continue;
    const interlock::Row& row = interlock::matrix()[static_cast<std::size_t>(bypass.cause)];
    if (row.holds[picture.room.actuators[i].role] == interlock::Hold::none) continue;
    text += fmt::format(" ({} is bypassed until {} by {})", room::name(bypass.cause),
                        clock_time(bypass.until, picture.circumstances.wall), bypass.who.view());
  }
  return text;
}

std::string lease_word(const state::Proof& proof) {
  if (proof.at == long_ago) return "never tried";
  return proof.passed ? "kept" : "not kept";
}

std::string power_why(const Picture& picture, room::ActuatorIndex i) {
  const auto meter = room::find(picture.room, room::Quantity::power, i);
  if (!meter) return "its power is not measured";
  return words(picture.room, signal_reason(picture, *meter));
}

// As NE 107 has it; none where there is no such instrument.
std::optional<std::string> status_of(const Picture& picture, room::Quantity quantity,
                                     room::ActuatorIndex i) {
  const auto instrument = room::find(picture.room, quantity, i);
  if (!instrument) return std::nullopt;
  return status_word(picture.signals[*instrument].status);
}

}  // namespace

Thing actuator(const Picture& picture, room::ActuatorIndex i) {
  const room::Actuator& actuator = picture.room.actuators[i];
  const state::Drive& drive = picture.drives[i];
  auto confirmed = picture::confirmed(picture, i);
  if (mutant(Mutant::command_shown_as_feedback)) confirmed = drive.on;
  const auto watts = picture::power(picture, i);
  const std::string trip = tripped_by(picture);
  Fields fields{"actuator", actuator.id};
  fields.add("wanted", drive.wanted)
      .add("commanded", drive.on)
      .add_if("confirmed", confirmed, feedback_why(picture, i))
      .add_if("confirmed_status", status_of(picture, room::Quantity::feedback, i),
              "it gives no feedback")
      .add("why", why(picture, i))
      .add("lease_s", seconds(actuator.lease), 0)
      .add("lease_proof", lease_word(picture.lease_tests.results[i]))
      .add("tripped", !trip.empty())
      .add("tripped_by", trip)
      // On although it was told OFF and had obeyed: a hand on the button.
      .add("override", confirmed == true && !drive.on && drive.obeyed)
      .add_if("power_w", watts ? std::optional{watts->value} : std::nullopt, power_why(picture, i))
      .add_if("power_w_status", status_of(picture, room::Quantity::power, i),
              "its power is not measured")
      .add("run_hours_total", hours(picture.ledger.working[i].total));
  return fields.done();
}

}  // namespace tidewright::report
