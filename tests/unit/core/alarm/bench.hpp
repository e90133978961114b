// One room's alarms on a bench: conditions, latches and people as a test wants them, and what was
// announced and answered.
#pragma once

#include <algorithm>
#include <vector>

#include "core/alarm/alarm_state.hpp"
#include "core/alarm/digest.hpp"
#include "core/alarm/live.hpp"
#include "core/rules/catalogue.hpp"

namespace tidewright {

struct AlarmBench {
  AlarmBench() {
    room.rules = rules::default_settings();
    circumstances.now = Instant{std::chrono::hours{1000}};
    circumstances.link_up = true;
  }

  // Time passes and one event happens.
  void pass(Duration later, const Ask* ask = nullptr) {
    circumstances.now += later;
    Event event{circumstances.now, Tick{}};
    if (ask) event.what = *ask;
    effects.clear();
    if (ask && ask->kind == AskKind::confirm) {  // as the interlock does before the alarm stage
      latches[ask->alarm] = {};
      effects.push(Answer{ask->ticket, true, {Why::done, no_subject, {}}});
    }
    wake = {};
    alarm::live(room, event, findings, latches, circumstances, alarms, flood, effects, wake);
    for (const Effect& effect : effects) {
      if (const auto* told = std::get_if<Announcement>(&effect)) announced.push_back(*told);
    }
  }

  // As the step does after the alarms have lived; true if the digest was announced.
  bool pass_digest(Duration later) {
    pass(later);
    effects.clear();
    wake = {};
    alarm::digest(latches, circumstances, made, alarms, digest, effects, wake);
    return std::any_of(effects.begin(), effects.end(), [](const Effect& effect) {
      const auto* told = std::get_if<Announcement>(&effect);
      return told && told->event == Announced::digest;
    });
  }

  void condition(room::RuleId id, bool on, Duration later = std::chrono::seconds{1}) {
    state::Finding& finding = findings[id];
    if (on && !finding.active) {
      std::copy_backward(finding.activations.begin(), finding.activations.end() - 1,
                         finding.activations.end());
      finding.activations[0] = circumstances.now + later;
    }
    finding.active = on;
    pass(later);
  }

  void latch(room::RuleId id) { latches[id] = {true, false, circumstances.now, {}}; }

  // What the answer to this ask was.
  Reason ask(AskKind kind, room::RuleId id, Duration lasting = {}, std::uint32_t occurrence = 0) {
    Ask ask{};
    ask.kind = kind;
    ask.ticket = 7;
    ask.alarm = id;
    ask.lasting = lasting;
    ask.occurrence = occurrence;
    pass(std::chrono::seconds{1}, &ask);
    for (const Effect& effect : effects) {
      if (const auto* answer = std::get_if<Answer>(&effect)) return answer->why;
    }
    return {};
  }

  alarm::AlarmState state(room::RuleId id) const {
    return alarm::state_of(alarms[id], latches[id].set);
  }

  int told(Announced event) const {
    return static_cast<int>(std::count_if(
        announced.begin(), announced.end(),
        [&](const Announcement& announcement) { return announcement.event == event; }));
  }

  room::Room room;
  state::Findings findings;
  state::Latches latches;
  state::Circumstances circumstances;
  state::Alarms alarms;
  state::Flood flood;
  state::Digest digest;
  Litres made;
  Effects effects;
  Wake wake;
  std::vector<Announcement> announced;
};

}  // namespace tidewright
