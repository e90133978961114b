#include "core/nights/broker.hpp"

#include <algorithm>

namespace tidewright::nights {
namespace {

using namespace std::chrono_literals;

// What comes so soon after subscribing may be the broker's memory: its age is not known.
constexpr Duration just_subscribed = 2s;

}  // namespace

Broker::Broker(const room::Room&, Duration latency, bool retains, std::uint64_t seed)
    : latency_(latency), retains_(retains), chance_(seed) {}

void Broker::hear(const Event& word) {
  if (const auto* reading = std::get_if<Reading>(&word.what)) {
    if (retains_) kept[reading->instrument] = *reading;
    if (faults.cut[reading->instrument]) return;
  } else if (const auto* refusal = std::get_if<Refusal>(&word.what)) {
    if (faults.cut[refusal->instrument]) return;
  } else if (const auto* available = std::get_if<Availability>(&word.what)) {
    online_[available->instrument] = available->online;
  }
  if (faults.lost_to_daemon > 0 && chance_.uniform() < faults.lost_to_daemon) return;
  deliver(word);
  if (faults.doubled > 0 && chance_.uniform() < faults.doubled) {
    forge(word, word.at + Duration{static_cast<Duration::rep>(chance_.uniform() * 60'000)});
  }
}

void Broker::deliver(const Event& word) {
  if (faults.late > Duration{0}) {
    const double share = chance_.uniform();
    const auto more = static_cast<Duration::rep>(share * static_cast<double>(faults.late.count()));
    return forge(word, word.at + Duration{more});
  }
  const Instant due = std::max(word.at + latency_ + faults.slow, last_for_daemon_);
  last_for_daemon_ = due;
  if (connected_ && !faults.half_open) to_daemon_.emplace(due, word);
}

void Broker::forge(const Event& word, Instant at) {
  if (connected_ && !faults.half_open) to_daemon_.emplace(at + latency_, word);
}

void Broker::take(const Command& command, Instant now) {
  if (!connected_ || faults.half_open) return;
  const std::uint8_t code = faults.refuses[command.actuator];
  forge({now, Delivery{command.actuator, command.on, code}}, now + latency_);
  if (code != 0) return;
  if (faults.lost_to_plugs > 0 && chance_.uniform() < faults.lost_to_plugs) return;
  const Instant due = std::max(now + latency_ + faults.slow, last_for_plugs_);
  last_for_plugs_ = due;
  to_plugs_.emplace(due, Outgoing{command, now});
}

void Broker::connect(Instant now) {
  connected_ = true;
  connected_at_ = now;
  faults.half_open = false;
  to_daemon_.clear();
  to_daemon_.emplace(now, Event{now, Link{true}});
  deliver_kept(now);
}

void Broker::deliver_kept(Instant now) {
  for (std::size_t i = 0; i < kept.size(); ++i) {
    const auto index = static_cast<room::InstrumentIndex>(i);
    if (online_[i]) to_daemon_.emplace(now + latency_, Event{now, Availability{index, true}});
    if (!kept[i] || faults.cut[i]) continue;
    Reading reading = *kept[i];
    reading.arrival = reading.taken == long_ago ? Arrival::retained : Arrival::dated;
    to_daemon_.emplace(now + latency_, Event{now, reading});
  }
}

void Broker::disconnect() {
  connected_ = false;
  to_daemon_.clear();
}

Instant Broker::next() const {
  const Instant daemon = to_daemon_.empty() ? never : to_daemon_.begin()->first;
  return std::min(daemon, next_for_plugs());
}

std::optional<Event> Broker::for_daemon(Instant now) {
  if (to_daemon_.empty() || to_daemon_.begin()->first > now) return std::nullopt;
  Event word = to_daemon_.begin()->second;
  to_daemon_.erase(to_daemon_.begin());
  word.at = now;
  auto* reading = std::get_if<Reading>(&word.what);
  if (reading != nullptr && reading->arrival == Arrival::live &&
      now - connected_at_ < just_subscribed) {
    reading->arrival = reading->taken == long_ago ? Arrival::retained : Arrival::dated;
  }
  return word;
}

std::optional<Command> Broker::for_plug(Instant now) {
  while (next_for_plugs() <= now) {
    const Outgoing outgoing = to_plugs_.begin()->second;
    to_plugs_.erase(to_plugs_.begin());
    // What has lain longer than its life is dropped, as MQTT 5 has it.
    if (now - outgoing.sent <= outgoing.command.life) return outgoing.command;
  }
  return std::nullopt;
}

}  // namespace tidewright::nights
