#include "tests/support/theatre.hpp"

#include <stdexcept>
#include <utility>

namespace tidewright::support {

Theatre::Theatre(room::Room room, const rehearsal::Settings& settings, std::uint64_t seed)
    : room_(std::move(room)),
      pretend_(room_, settings, seed, curtain),
      curtain_(curtain),
      silent_since_(curtain) {}

void Theatre::start(bool clean) {
  start({.clean = clean, .away = ran_before_ ? now() - silent_since_ : Duration{0}});
}

void Theatre::start_without_records() {
  state_ = {};
  start({.clean = false, .readable = false});
}

void Theatre::start(Started started) {
  alive_ = true;
  ran_before_ = true;
  feed({now(), started});
  feed({now(), ClockSet{wall}});
  set_link(true);
}

void Theatre::stop() {
  feed({now(), Stopping{}});
  crash();
}

void Theatre::crash() {
  alive_ = link_ = false;
  silent_since_ = now();
  wake_ = never;
}

void Theatre::set_link(bool up) {
  link_ = up;
  feed({now(), Link{up}});
  if (!up) return;
  // Availability topics are retained: the broker tells them at once.
  for (std::size_t i = 0; i < online_.size(); ++i) {
    if (online_[i]) feed({now(), Availability{static_cast<room::InstrumentIndex>(i), true}});
  }
}

void Theatre::carry_out(const Effect& effect) {
  if (const auto* command = std::get_if<Command>(&effect)) {
    const std::uint8_t code = broker_says[command->actuator];
    if (!link_) return;
    if (code == 0) pretend_.obey(*command);
    pending_.push_back({now(), Delivery{command->actuator, command->on, code}});
  } else if (std::holds_alternative<Persist>(effect)) {
    pending_.push_back({now(), Recorded{disk_takes}});
  } else if (const auto* announcement = std::get_if<Announcement>(&effect)) {
    announced.push_back(report::message(room_, state_, *announcement));
  } else if (const auto* said = std::get_if<Answer>(&effect)) {
    answer = *said;
  }
}

void Theatre::feed(const Event& event) {
  if (!alive_) return;
  wake_ = step(room_, state_, event, effects_);
  ++steps;
  if (keeps_history) history.push_back(event);
  for (const Effect& effect : effects_) carry_out(effect);
  while (!pending_.empty()) {
    const Event next = pending_.front();
    pending_.pop_front();
    feed(next);
  }
}

bool Theatre::play(Instant to, const std::function<bool()>& enough) {
  std::vector<Event> said;
  while (now() < to) {
    said.clear();
    pretend_.advance(std::min(to, std::max(wake_, now())), said);
    for (const Event& event : said) {
      if (const auto* available = std::get_if<Availability>(&event.what)) {
        online_[available->instrument] = available->online;
      }
      if (link_) feed(event);
    }
    if (now() >= wake_) {
      feed({now(), Tick{}});
      if (now() >= wake_) throw std::logic_error("step asks to be woken at once, for ever");
    }
    if (enough && enough()) return true;
  }
  return false;
}

}  // namespace tidewright::support
