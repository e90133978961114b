#include "daemon/mqtt/report_line.hpp"

#include <algorithm>
#include <random>
#include <utility>

#include "daemon/log/log.hpp"
#include "daemon/mqtt/report_wire.hpp"

namespace tidewright::mqtt {
namespace {

using Phase = ReportWire::Phase;
using Clock = ReportLine::Clock;

constexpr std::size_t once_max = 64;
// A connection on which an answer is missing for so long is given up.
constexpr std::chrono::seconds patience{5};

}  // namespace

ReportLine::ReportLine(ReportSettings settings, std::function<void()> wake)
    : settings_(std::move(settings)), wake_(std::move(wake)), back_off_(std::random_device{}()) {}

ReportLine::~ReportLine() = default;

void ReportLine::allow(int mqtt_version) {
  if (wire_ && wire_->version == mqtt_version) return;
  wire_ = std::make_unique<ReportWire>(settings_, mqtt_version, wake_);
  next_try_ = Clock::now();
}

void ReportLine::forbid() { wire_.reset(); }

void ReportLine::show(std::vector<hub::Message> all) {
  for (hub::Message& change : hub::changes(shown_, all)) {
    const auto same = std::find_if(due_.begin(), due_.end(), [&](const hub::Message& message) {
      return message.topic == change.topic;
    });
    if (same == due_.end()) {
      due_.push_back(std::move(change));
    } else {
      *same = std::move(change);
    }
  }
  shown_ = std::move(all);
}

void ReportLine::send(hub::Message message, std::string correlation) {
  if (once_.size() == once_max) {
    log::warning("The broker has been away for long: the oldest message is dropped.");
    once_.erase(once_.begin());
  }
  once_.push_back({std::move(message), std::move(correlation)});
}

Clock::time_point ReportLine::tend() {
  const auto now = Clock::now();
  if (!wire_) return now + patience;
  std::unique_lock guard(wire_->lock);
  const Phase phase = wire_->phase;
  if (phase == Phase::fresh) wire_->phase = Phase::connected;
  const bool waits = phase == Phase::connecting || wire_->unacknowledged > 0;
  const bool hangs = waits && now - wire_->heard > patience;
  const std::string trouble = std::exchange(wire_->trouble, {});
  guard.unlock();

  if (!trouble.empty()) log::error(trouble);
  if (hangs) {
    wire_->drop();
  } else if (phase == Phase::away) {
    try_to_connect(now);
  } else if (phase != Phase::connecting) {
    if (phase == Phase::fresh) greet();
    publish_what_is_due();
  }
  return phase == Phase::away ? next_try_ : now + patience;
}

// The first call after a loss only sets the time of the next try.
void ReportLine::try_to_connect(Clock::time_point now) {
  if (next_try_ == Clock::time_point{}) {
    const auto lasted = wire_->connected_at == Clock::time_point{}
                            ? Clock::duration{0}
                            : now - std::exchange(wire_->connected_at, {});
    next_try_ = now + back_off_.wait(std::chrono::duration_cast<Milliseconds>(lasted));
  } else if (now >= next_try_) {
    next_try_ = {};
    wire_->begin(settings_);
  }
}

// The broker may have forgotten everything: requests are subscribed to and all is published anew.
void ReportLine::greet() {
  try {
    wire_->client.subscribe(wire_->ask_topic, 1, wire_->this_connection(), *wire_);
    wire_->client.subscribe(wire_->tell_topic, 1, wire_->this_connection(), *wire_);
  } catch (const ::mqtt::exception&) {
    // The connection is lost again; `lost` says so.
  }
  due_.assign(1, {wire_->online_topic, "online"});
  due_.insert(due_.end(), shown_.begin(), shown_.end());
}

void ReportLine::publish_what_is_due() {
  std::size_t once_gone = 0;
  while (once_gone < once_.size() &&
         publish(once_[once_gone].message, once_[once_gone].correlation)) {
    ++once_gone;
  }
  once_.erase(once_.begin(), once_.begin() + static_cast<std::ptrdiff_t>(once_gone));
  std::size_t gone = 0;
  while (gone < due_.size() && publish(due_[gone], {})) ++gone;
  due_.erase(due_.begin(), due_.begin() + static_cast<std::ptrdiff_t>(gone));
}

// False if the window is full or the connection is lost.
bool ReportLine::publish(const hub::Message& message, const std::string& correlation) {
  {
    const std::lock_guard guard(wire_->lock);
    if (wire_->unacknowledged >= window) return false;
    if (wire_->unacknowledged++ == 0) wire_->heard = Clock::now();
  }
  ::mqtt::properties properties;
  if (!correlation.empty() && wire_->version == 5) {
    properties.add({::mqtt::property::CORRELATION_DATA, correlation});
  }
  try {
    wire_->client.publish(
        ::mqtt::message::create(message.topic, message.payload, 1, message.retained, properties),
        wire_->this_connection(), *wire_);
    return true;
  } catch (const ::mqtt::exception&) {
    const std::lock_guard guard(wire_->lock);
    --wire_->unacknowledged;
    return false;
  }
}

std::optional<hub::Letter> ReportLine::letter() {
  if (!wire_) return std::nullopt;
  const std::lock_guard guard(wire_->lock);
  if (wire_->letters.empty()) return std::nullopt;
  hub::Letter first = std::move(wire_->letters.front());
  wire_->letters.erase(wire_->letters.begin());
  return first;
}

void ReportLine::close(Milliseconds longest) {
  if (!wire_) return;
  try {
    wire_->client.publish(wire_->online_topic, "offline", 7, 1, true)->wait_for(longest);
    wire_->client.disconnect(0)->wait_for(longest);
  } catch (const ::mqtt::exception&) {
    // Not connected: then the will has spoken, or nobody knows us.
  }
  wire_.reset();
}

}  // namespace tidewright::mqtt
