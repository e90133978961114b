#include "daemon/decision.hpp"

#include <fmt/format.h>

#include "daemon/log/log.hpp"
#include "daemon/mqtt/refusal.hpp"

namespace tidewright {
namespace {

// "{seconds}" in the word for ON becomes the lease.
std::string with_lease(std::string word, Duration lease) {
  constexpr std::string_view mark = "{seconds}";
  const std::size_t at = word.find(mark);
  if (at == word.npos) return word;
  const auto whole = std::chrono::ceil<std::chrono::seconds>(lease).count();
  return word.replace(at, mark.size(), std::to_string(whole));
}

}  // namespace

Decision::Decision(const Surroundings& around)
    : around_(around), topics_(around.household), state_(around.store.found().state) {
  for (std::size_t i = 0; i < around.household.outlets.size(); ++i) {
    const config::Outlet& outlet = around.household.outlets[i];
    payloads_.push_back(
        {with_lease(outlet.on, around.household.room.actuators[i].lease), outlet.off});
  }
}

void Decision::start() {
  const store::Found& found = around_.store.found();
  const Duration away = found.last == long_ago ? Duration{0} : around_.clock.now() - found.last;
  happen(Started{.clean = found.clean, .away = away, .readable = found.readable});
  happen(ClockSet{around_.clock.wall()});
}

void Decision::happen(const decltype(Event::what)& what, std::string_view raw) {
  const Event event{around_.clock.now(), what};
  due_ = step(around_.household.room, state_, event, effects_);
  for (const Effect& effect : effects_) {
    if (const auto* wanted = std::get_if<Command>(&effect)) command(*wanted);
  }
  sequence_ = around_.store.record(event, raw, state_);
  carry_out_the_rest();
}

void Decision::command(const Command& wanted) {
  const Payloads& payloads = payloads_[wanted.actuator];
  around_.line.command(wanted.actuator, wanted.on, around_.household.outlets[wanted.actuator].topic,
                       wanted.on ? payloads.on : payloads.off, wanted.life);
}

// No latch that was announced is ever lost: what a pass announces after Persist waits for the
// disk, or for the disk's refusal.
void Decision::carry_out_the_rest() {
  bool persist = false;
  for (const Effect& effect : effects_) {
    if (std::holds_alternative<Persist>(effect)) {
      persist = true;
    } else if (const auto* answer = std::get_if<Answer>(&effect)) {
      around_.reporter.answer(*answer);
    } else if (const auto* announcement = std::get_if<Announcement>(&effect)) {
      if (persist) {
        held_.push_back({sequence_, *announcement, state_});
      } else {
        around_.reporter.announce(*announcement, newest(sequence_, state_));
      }
    }
  }
  if (persist) around_.store.persist();
  shown_ = false;
}

// A refusal is said once, until the broker says something else; the alarm follows by its rule.
void Decision::told(const Delivery& delivery) {
  const bool news = state_.circumstances.delivery.at(delivery.actuator) != delivery.code;
  if (delivery.code >= mqtt::refused_from && news) {
    log::error(fmt::format(
        "The broker does not let us write {} ({}): {} cannot be switched from here. Allow writing "
        "it in the broker's access list.",
        around_.household.outlets[delivery.actuator].topic, mqtt::refusal_words(delivery.code),
        around_.household.room.actuators[delivery.actuator].words));
  }
  happen(delivery);
}

void Decision::committed() {
  const store::Committed done = around_.store.committed();
  tell_held(done.sequence);
  if (done.ok == recording_) return;
  recording_ = done.ok;
  if (!done.ok) log::error("The disk does not take the daemon's record. Is it full or read-only?");
  happen(Recorded{done.ok});
}

void Decision::tell_held(std::uint64_t up_to) {
  while (!held_.empty() && held_.front().sequence <= up_to) {
    const Held& held = held_.front();
    around_.reporter.announce(held.announcement, newest(held.sequence, held.state));
    held_.erase(held_.begin());
    beats_held_ = 0;
  }
}

// A disk that hangs gives no answer at all, and people must be told all the same.
void Decision::doubt_the_disk() {
  constexpr int beats_held_most = 20;  // 5 s
  if (held_.empty() || ++beats_held_ < beats_held_most) return;
  tell_held(sequence_);
  if (!recording_) return;
  recording_ = false;
  log::error("The disk has not answered for 5 s.");
  happen(Recorded{false});
}

void Decision::rest() {
  const WallClock wall = around_.clock.wall();
  if (stepped(state_.circumstances.wall, wall)) {
    log::info("The wall clock was set; no timer is moved by it.");
    happen(ClockSet{wall});
  }
  doubt_the_disk();
  show();
}

void Decision::part() { around_.reporter.show(newest(sequence_, state_)); }

// Of that state and what the reporter was given before.
const State& Decision::newest(std::uint64_t sequence, const State& state) {
  if (sequence > told_.sequence) told_ = {.sequence = sequence, .state = state};
  return told_.state;
}

void Decision::glance() {
  if (!draft_ && !shown_) {
    draft_ = Draft{.sequence = sequence_, .state = state_};
    shown_ = true;
  }
  if (draft_ && draft_->sequence <= around_.store.recorded()) hand_over();
}

void Decision::show() {
  constexpr int beats_waited_most = 8;  // 2 s: another program may hold the journal
  glance();
  if (!draft_) return;
  if (!recording_ || ++draft_->beats_waited >= beats_waited_most) hand_over();
}

void Decision::hand_over() {
  around_.reporter.show(newest(draft_->sequence, draft_->state));
  draft_.reset();
}

void Decision::hear(const mqtt::Inbound& message) {
  const bool unknown_age = message.retained() || around_.line.just_subscribed();
  for (const intake::Target& target : topics_.find(message.topic())) {
    judge(target, {message.payload(), unknown_age});
  }
}

void Decision::judge(const intake::Target& target, const intake::Message& message) {
  const config::Source& source = around_.household.sources[target.instrument];
  if (target.kind == intake::Target::Kind::availability) {
    const auto said = intake::decode(*source.availability, target.instrument, message.payload);
    if (const auto* availability = std::get_if<Availability>(&said)) {
      happen(*availability, message.payload);
    }
    return;
  }
  const auto read =
      intake::decode(source, around_.household.room.instruments[target.instrument],
                     target.instrument, message, state_.circumstances.wall, around_.clock.now());
  if (const auto* reading = std::get_if<Reading>(&read)) {
    happen(*reading, message.payload);
  } else {
    refuse(target.instrument, std::get<intake::Refused>(read), message.payload);
  }
}

void Decision::refuse(room::InstrumentIndex instrument, intake::Refused why, std::string_view raw) {
  if (why != intake::Refused::nothing_there) happen(Refusal{instrument}, raw);
  log::warning(fmt::format("{}: a message on {} is no reading: {}.",
                           around_.household.room.instruments[instrument].id,
                           around_.household.sources[instrument].topic, intake::words(why)));
}

}  // namespace tidewright
