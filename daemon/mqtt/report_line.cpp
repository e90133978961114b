#include "daemon/mqtt/report_line.hpp"

#include <algorithm>
#include <iterator>
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
    : settings_(std::move(settings)),
      wake_(std::move(wake)),
      births_(std::random_device{}()),
      back_off_(std::random_device{}()) {}

ReportLine::~ReportLine() = default;

void ReportLine::allow(int mqtt_version) {
  if (wire_ && wire_->version() == mqtt_version) return;
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
  const ReportWire::Seen seen = wire_->look();
  const bool hangs = seen.waiting && now - seen.heard > patience;
  acknowledged_ = seen.phase == Phase::connected && !seen.waiting && due_.empty();
  for (const std::string& trouble : seen.trouble) log::error(trouble);
  if (hangs) {
    wire_->drop();
  } else if (seen.phase == Phase::away) {
    try_to_connect(now, seen.connected_at);
  } else if (seen.phase != Phase::connecting) {
    if (seen.phase == Phase::fresh) greet();
    answer_birth(now, seen.hub_born);
    if (begun_ && acknowledged_ && !shown_.empty()) {
      begun_ = false;
      due_.push_back({settings_.presence.topic, settings_.presence.ready});
    }
    publish_what_is_due();
  }
  if (seen.phase == Phase::away) return next_try_;
  return births_.due() ? std::min(*births_.due(), now + patience) : now + patience;
}

// The first call after a loss only sets the time of the next try.
void ReportLine::try_to_connect(Clock::time_point now, Clock::time_point connected_at) {
  if (next_try_ == Clock::time_point{}) {
    // A connect that failed is younger than the last that came about.
    const bool lasted = connected_at > last_try_;
    const auto life = lasted ? now - connected_at : Clock::duration{0};
    next_try_ = now + back_off_.wait(std::chrono::duration_cast<Milliseconds>(life));
  } else if (now >= next_try_) {
    next_try_ = {};
    last_try_ = now;
    wire_->begin();
  }
}

// The broker may have forgotten everything: requests are subscribed to and all is published anew.
void ReportLine::greet() {
  wire_->subscribe_to_requests();
  due_.assign(1, {settings_.presence.topic, settings_.presence.begin});
  due_.insert(due_.end(), shown_.begin(), shown_.end());
  begun_ = !settings_.presence.ready.empty();
}

// What the hub may have missed: that we are online, where each value is, and the values; not the
// documents, which no hub reads.
void ReportLine::answer_birth(Clock::time_point now, bool born) {
  if (born) births_.heard(now);
  if (!births_.due() || now < *births_.due()) return;
  births_.answered(now);
  std::vector<hub::Message> again{{settings_.presence.topic, settings_.presence.begin}};
  std::copy_if(shown_.begin(), shown_.end(), std::back_inserter(again),
               [](const hub::Message& message) { return message.content_from == 0; });
  std::erase_if(due_, [&](const hub::Message& message) { return message.content_from == 0; });
  due_.insert(due_.begin(), again.begin(), again.end());
}

void ReportLine::publish_what_is_due() {
  std::size_t once_gone = 0;
  while (once_gone < once_.size() &&
         wire_->publish(once_[once_gone].message, once_[once_gone].correlation)) {
    ++once_gone;
  }
  once_.erase(once_.begin(), once_.begin() + static_cast<std::ptrdiff_t>(once_gone));
  std::size_t gone = 0;
  while (gone < due_.size() && wire_->publish(due_[gone], {})) ++gone;
  due_.erase(due_.begin(), due_.begin() + static_cast<std::ptrdiff_t>(gone));
}

std::optional<hub::Letter> ReportLine::letter() { return wire_ ? wire_->letter() : std::nullopt; }

void ReportLine::close(Milliseconds longest) {
  if (wire_) wire_->say_goodbye(longest);
  wire_.reset();
}

}  // namespace tidewright::mqtt
