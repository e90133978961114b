// The weekly digest in words: what stands, what is hidden, what was made.
#include "core/alarm/digest.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <initializer_list>

#include "core/report/phrases.hpp"
#include "core/report/report.hpp"
#include "core/rules/catalogue.hpp"

namespace tidewright::report {
namespace {

using alarm::Listed;
using rules::Rule;

// "The vat is due for cleaning, for 9 days: the pure vat was … . Empty the vat, …"
std::string standing(const room::Room& room, const State& state, const Rule& rule) {
  const state::Alarm& alarm = state.alarms[rule.id];
  const state::Latch& latch = state.latches[rule.id];
  const std::string why = words(room, latch.set ? latch.cause : alarm.why);
  return fmt::format("{}, for {}: {}. {}", rule.title,
                     lasting(state.circumstances.now - alarm.since), why,
                     sentence(std::string(rule.record.action)));
}

std::string hidden(const State& state, const Rule& rule) {
  const state::Alarm& alarm = state.alarms[rule.id];
  const std::string stands = alarm.active ? ", and its cause stands" : "";
  if (alarm.suppression == state::Suppression::out_of_service) {
    return fmt::format("{} (`{}`): out of service by the file{}.", rule.title, rule.name, stands);
  }
  const WallClock& wall = state.circumstances.wall;
  return fmt::format("{} (`{}`): shelved until {} {}{}.", rule.title, rule.name,
                     date(alarm.shelved_until, wall), clock_time(alarm.shelved_until, wall),
                     stands);
}

// The lines of those that are listed so, under a heading; empty if there are none.
std::string chapter(const room::Room& room, const State& state, std::string_view heading,
                    std::initializer_list<Listed> meant) {
  std::string text;
  for (const Rule* rule : rules::catalogue) {
    const auto why = alarm::listed(*rule, state.alarms[rule->id], state.latches[rule->id].set,
                                   state.circumstances.now);
    if (!why || std::find(meant.begin(), meant.end(), *why) == meant.end()) continue;
    const bool shown = *why == Listed::stale || *why == Listed::standing;
    text += ' ';
    text += shown ? standing(room, state, *rule) : hidden(state, *rule);
  }
  return text.empty() ? text : fmt::format("{}{} ", heading, text);
}

}  // namespace

Message digest_message(const room::Room& room, const State& state) {
  Message message;
  message.at = state.circumstances.now;
  message.id = message.event = "digest";
  message.title = "The week in the water room";
  message.text =
      chapter(room, state,
              "These have stood for too long; fix the cause, shelve the alarm, or take it out of "
              "service in the file.",
              {Listed::stale}) +
      chapter(room, state, "To be done in the next days.", {Listed::standing}) +
      chapter(room, state, "Not told at present.", {Listed::hidden, Listed::out_of_service}) +
      fmt::format("{} L of pure water were made this week.", number(state.digest.made.value));
  return message;
}

}  // namespace tidewright::report
