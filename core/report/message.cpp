// The phone text. Who knows only this text can say what happened, what the daemon did, which cock
// to turn and by when.
#include <fmt/format.h>

#include <algorithm>

#include "core/picture/picture.hpp"
#include "core/report/phrases.hpp"
#include "core/report/report.hpp"
#include "core/rules/catalogue.hpp"

namespace tidewright::report {
namespace {

using rules::Priority;
using rules::Rule;

std::string_view event_word(Announced event) {
  switch (event) {
    case Announced::raised:
      return "raised";
    case Announced::reminder:
      return "reminder";
    case Announced::cleared:
      return "cleared";
    case Announced::test:
      return "test";
  }
  return "raised";
}

void append(std::string& text, const std::string& more) {
  if (more.empty()) return;
  if (!text.empty()) text += ' ';
  text += sentence(more);
}

// What the daemon did by itself, as far as it can do anything in this room.
std::string did(const room::Room& room, const Rule& rule) {
  if (room.actuators.empty()) return "this daemon switches nothing here";
  if (rule.id != room::RuleId::resin_breakthrough || !room.purifier) {
    return std::string(rule.record.automatic);
  }
  if (room.purifier->on_breakthrough == room::OnBreakthrough::notify) {
    return "nothing was stopped, the water goes on into the vat";
  }
  return fmt::format("the pump stops from {} ppm on", number(room.purifier->stop_at.value));
}

// Whether what was tripped says that it is off.
std::string confirmation(const picture::Picture& picture) {
  std::string text;
  for (std::size_t n = 0; n < picture.room.actuators.size(); ++n) {
    const auto i = static_cast<room::ActuatorIndex>(n);
    const auto says_on = picture::confirmed(picture, i);
    const std::string it = actuator_words(picture.room, i);
    if (!says_on) {
      append(text, it + " was sent OFF but gives no answer: look at it");
    } else if (*says_on) {
      append(text, it + " was sent OFF and has not confirmed it yet");
    } else {
      append(text, it + " says that it is off");
    }
  }
  return text;
}

bool water_may_go_on(const room::Room& room, const Rule& rule) {
  return rule.priority == Priority::urgent && room.purifier && !room.actuators.empty() &&
         room.purifier->water_stops_with != room::WaterStopsWith::valve;
}

std::string by_when(const Rule& rule, Instant since, const WallClock& wall) {
  const std::string within = "time to act: " + lasting(rule.respond_within);
  if (rule.respond_within >= std::chrono::hours{24}) return within;
  return within + ", until " + clock_time(since + rule.respond_within, wall);
}

std::string how_often(const state::Finding& finding, Instant now) {
  const auto times = [&](Duration span) {
    return std::count_if(finding.activations.begin(), finding.activations.end(),
                         [&](Instant at) { return at != long_ago && now - at <= span; });
  };
  const auto lately = times(std::chrono::minutes{10});
  const std::string often = lately >= 3
                                ? fmt::format("{} times in 10 min", lately)
                                : fmt::format("{} times in 24 h", times(std::chrono::hours{24}));
  return "this came " + often +
         "; more of the same are not told one by one. If nothing is wrong, give this alarm a "
         "longer "
         "delay in the file";
}

std::string standing_text(const room::Room& room, const State& state, const Rule& rule,
                          const Announcement& announcement) {
  const picture::Picture picture = picture::draw(room, state);
  const state::Alarm& alarm = state.alarms[rule.id];
  std::string text;
  append(text, words(room, announcement.why));
  if (!state.findings[rule.id].active) append(text, "that is over, but nobody has reset it");
  append(text, did(room, rule));
  if (state.latches[rule.id].set) append(text, confirmation(picture));
  if (water_may_go_on(room, rule)) {
    append(text, "stopping the pump does not stop the water: it is still under pressure");
  }
  append(text, std::string(rule.record.action));
  if (announcement.event == Announced::reminder) {
    append(text, "it stands since " + clock_time(alarm.since, state.circumstances.wall));
  } else {
    append(text, by_when(rule, alarm.since, state.circumstances.wall));
  }
  if (alarm.chattering) append(text, how_often(state.findings[rule.id], state.circumstances.now));
  return text;
}

std::string cleared_text(const room::Room& room, const State& state, const Rule& rule,
                         const Announcement& announcement) {
  std::string text = "It is over: " + words(room, announcement.why) + ".";
  append(text, "it lasted " + lasting(state.circumstances.now - state.alarms[rule.id].since));
  if (state.latches[rule.id].set) {
    append(text,
           fmt::format("everything stays off until you reset `{}`; after that, `start` begins "
                       "the fill anew",
                       rule.name));
  }
  return text;
}

Message test_message(Instant now) {
  return {
      now,
      static_cast<std::uint8_t>(Priority::days),
      "test",
      0,
      "test",
      "Test",
      "This is a test of the way to your phone. Nothing has happened and nothing is to be done."};
}

}  // namespace

Message message(const room::Room& room, const State& state, const Announcement& announcement) {
  const Instant now = state.circumstances.now;
  if (announcement.event == Announced::test) return test_message(now);
  const Rule& rule = rules::rule(announcement.alarm);
  Message message;
  message.at = now;
  message.priority = static_cast<std::uint8_t>(rules::priority_of(rule, announcement.why));
  message.id = rule.name;
  message.occurrence = announcement.occurrence;
  message.event = event_word(announcement.event);
  message.title = rule.title;
  if (announcement.event == Announced::cleared) {
    message.title = "Over: " + message.title;
    message.text = cleared_text(room, state, rule, announcement);
    return message;
  }
  if (announcement.event == Announced::reminder) message.title = "Still: " + message.title;
  message.text = standing_text(room, state, rule, announcement);
  return message;
}

}  // namespace tidewright::report
