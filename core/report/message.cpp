// The phone text. Who knows only this text can say what happened, what the daemon did, which cock
// to turn and by when.
#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "core/alarm/flood.hpp"
#include "core/picture/picture.hpp"
#include "core/report/phrases.hpp"
#include "core/report/report.hpp"
#include "core/report/things.hpp"
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
    case Announced::summary:
      return "summary";
    case Announced::digest:
      return "digest";
  }
  return "raised";
}

void append(std::string& text, const std::string& more) {
  if (more.empty()) return;
  if (!text.empty()) text += ' ';
  text += sentence(more);
}

// What the daemon did by itself and what the person does: the record's, but where one rule has
// several causes or the household has chosen.
struct Advice {
  std::string did;
  std::string action;
  Duration time_to_act;
};

Advice advice(const room::Room& room, const Rule& rule, Why why, bool latched) {
  Advice advice{std::string(rule.record.automatic), std::string(rule.record.action),
                rule.respond_within};
  if (rule.id == room::RuleId::resin_breakthrough && room.purifier) {
    const bool notify_only = room.purifier->on_breakthrough == room::OnBreakthrough::notify;
    advice.did = notify_only ? "nothing was stopped, the water goes on into the vat"
                             : fmt::format("the pump stops from {} ppm on",
                                           number(room.purifier->stop_at.value));
  }
  if (why == Why::product_membrane) {
    advice.action =
        "Look at the membrane first: feed pressure, flushing, its seals, its age. If the product "
        "is still above zero with a good membrane, rotate the resin canisters and tell `rotated`";
  } else if (why == Why::product_resin) {
    advice.action =
        "Rotate the resin canisters: the second moves to the front, fresh resin goes in last. "
        "Rinse, then tell `rotated`";
  } else if (why == Why::on_not_obeyed) {
    advice.did = "everything stays off until a person resets";
    advice.time_to_act = std::chrono::hours{24};
    advice.action = "See whether the plug has power and radio. Put a working plug in, then reset";
  }
  if (latched && rule.latching == rules::Latching::on_repeat) {
    advice.did = fmt::format(
        "it came too often in 24 h: everything is switched off now and stays off until a person "
        "resets `{}`",
        rule.name);
  }
  if (room.actuators.empty()) advice.did = "this daemon switches nothing here";
  return advice;
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

std::string by_when(Duration time_to_act, Instant since, const WallClock& wall) {
  std::string within = "time to act: " + lasting(time_to_act);
  if (time_to_act >= std::chrono::hours{24}) return within;
  return within + ", until " + clock_time(since + time_to_act, wall);
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
         "longer delay in the file";
}

Standing in_sentences(const room::Room& room, const State& state, const Rule& rule,
                      const Reason& why) {
  Standing standing;
  append(standing.happened, words(room, why));
  if (!state.findings[rule.id].active) {
    append(standing.happened, "that is over, but nobody has reset it");
  }
  const bool latched = state.latches[rule.id].set;
  const Advice advised = advice(room, rule, why.why, latched);
  append(standing.did, advised.did);
  if (latched) append(standing.did, confirmation(picture::draw(room, state)));
  if (water_may_go_on(room, rule)) {
    append(standing.action,
           "stopping the pump does not stop the water: it is still under pressure");
  }
  append(standing.action, advised.action);
  append(standing.by_when,
         by_when(advised.time_to_act, state.alarms[rule.id].since, state.circumstances.wall));
  return standing;
}

std::string standing_text(const room::Room& room, const State& state, const Rule& rule,
                          const Announcement& announcement) {
  const state::Alarm& alarm = state.alarms[rule.id];
  const Standing standing = in_sentences(room, state, rule, announcement.why);
  std::string text;
  append(text, standing.happened);
  append(text, standing.did);
  append(text, standing.action);
  if (announcement.event == Announced::reminder) {
    append(text, "it stands since " + clock_time(alarm.since, state.circumstances.wall));
  } else {
    append(text, standing.by_when);
  }
  if (alarm.chattering) append(text, how_often(state.findings[rule.id], state.circumstances.now));
  return text;
}

std::string cleared_text(const State& state, const Rule& rule) {
  const Instant now = state.circumstances.now;
  const WallClock& wall = state.circumstances.wall;
  const Instant since = state.alarms[rule.id].since;
  std::string text = fmt::format("It lasted {}, from {} to {}.", lasting(now - since),
                                 clock_time(since, wall), clock_time(now, wall));
  if (state.latches[rule.id].set) {
    append(text,
           fmt::format("everything stays off until you reset `{}`; after that, `start` begins "
                       "the fill anew",
                       rule.name));
  }
  return text;
}

// Many at once: the first of them as if it were told alone, then the others by their titles.
Message summary(const room::Room& room, const State& state, const Announcement& announcement,
                Message message) {
  const Instant now = state.circumstances.now;
  std::vector<const Rule*> others;
  for (const Rule* rule : rules::catalogue) {
    if (rule->id == announcement.alarm || !alarm::is_new(state.alarms[rule->id], now)) continue;
    others.push_back(rule);
    message.priority =
        std::min(message.priority,
                 static_cast<std::uint8_t>(rules::priority_of(*rule, state.alarms[rule->id].why)));
  }
  std::stable_sort(others.begin(), others.end(), [&](const Rule* a, const Rule* b) {
    return state.alarms[a->id].since < state.alarms[b->id].since;
  });
  message.title =
      fmt::format("{} alarms within {}", others.size() + 1, lasting(alarm::flood_within));
  append(message.text,
         fmt::format("look at the first one first: {}", rules::rule(announcement.alarm).title));
  append(message.text, standing_text(room, state, rules::rule(announcement.alarm), announcement));
  message.text += " Then came:";
  for (const Rule* rule : others) append(message.text, std::string(rule->title));
  return message;
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

Standing standing(const room::Room& room, const State& state, room::RuleId id) {
  const state::Latch& latch = state.latches[id];
  return in_sentences(room, state, rules::rule(id), latch.set ? latch.cause : state.alarms[id].why);
}

Message message(const room::Room& room, const State& state, const Announcement& announcement) {
  const Instant now = state.circumstances.now;
  if (announcement.event == Announced::test) return test_message(now);
  if (announcement.event == Announced::digest) return digest_message(room, state);
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
    message.text = cleared_text(state, rule);
    return message;
  }
  if (announcement.event == Announced::summary) return summary(room, state, announcement, message);
  if (announcement.event == Announced::reminder) message.title = "Still: " + message.title;
  message.text = standing_text(room, state, rule, announcement);
  return message;
}

}  // namespace tidewright::report
