#include "daemon/alerts/compose.hpp"

#include <fmt/format.h>

#include "core/report/report.hpp"
#include "daemon/hub/json_text.hpp"

namespace tidewright::alerts {
namespace {

constexpr std::uint8_t urgent = 1;

// The least pressing priority that goes this way.
std::uint8_t limit(config::Alarms alarms) {
  if (alarms == config::Alarms::urgent) return urgent;
  return alarms == config::Alarms::soon ? 2 : 3;
}

std::string body(const report::Message& message, const config::Household& household,
                 const std::string& notice, const WallClock& wall) {
  hub::ObjectText object;
  object.add("notice", hub::as_json(notice))
      .add("at", hub::as_json(report::wall_time(message.at, wall)))
      .add("room", hub::as_json(household.room.id))
      .add("event", hub::as_json(message.event))
      .add("alarm", hub::as_json(message.id))
      .add("occurrence", std::to_string(message.occurrence))
      .add("priority", std::to_string(message.priority))
      .add("title", hub::as_json(message.title))
      .add("text", hub::as_json(message.text));
  return object.closed();
}

}  // namespace

Instant end_of(const room::Hours& hours, Instant at, const WallClock& wall) {
  const Duration of_day = time_of_day(at, wall), to = std::chrono::minutes{hours.to};
  if (!hours.hold(of_day)) return at;
  return at + (of_day < to ? to - of_day : to + std::chrono::days{1} - of_day);
}

std::vector<Composed> compose(const config::Household& household, const State& state,
                              const state::Notice& notice, std::string_view instance) {
  const WallClock& wall = state.circumstances.wall;
  report::Message message = report::message(
      household.room, state, {notice.alarm, notice.occurrence, notice.event, notice.why});
  message.at = notice.at;
  const config::Alerts& wanted = household.alerts;
  const bool waits =
      wanted.do_not_disturb && message.priority > urgent && notice.event != Announced::test;
  Composed composed;
  composed.not_before = waits ? end_of(*wanted.do_not_disturb, notice.at, wall) : notice.at;
  composed.letter.notice = fmt::format("{}-{}", instance, notice.number);
  composed.letter.body = body(message, household, composed.letter.notice, wall);
  if (notice.event == Announced::reminder) {
    composed.of = fmt::format("{} {}", message.id, message.occurrence);
  }

  std::vector<Composed> all;
  const auto add = [&](post::Way way, config::Alarms alarms) {
    if (message.priority > limit(alarms) && notice.event != Announced::test) return;
    composed.letter.way = way;
    all.push_back(composed);
  };
  if (wanted.webhook) add(post::Way::webhook, wanted.webhook->alarms);
  if (wanted.mail) add(post::Way::mail, wanted.mail->alarms);
  return all;
}

}  // namespace tidewright::alerts
