#include "daemon/mqtt/safety_line.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <random>
#include <utility>

#include "daemon/log/log.hpp"

namespace tidewright::mqtt {
namespace {

constexpr std::chrono::seconds burst_after_subscribing{2};

std::uint32_t whole_seconds(Duration life) {
  const auto up = std::chrono::ceil<std::chrono::seconds>(life);
  return static_cast<std::uint32_t>(std::max<std::int64_t>(up.count(), 1));
}

}  // namespace

SafetyLine::SafetyLine(SafetySettings settings)
    : settings_(settings), connector_(std::move(settings)), back_off_(std::random_device{}()) {}

void SafetyLine::open() { connector_.start(Milliseconds{0}, true); }

int SafetyLine::handed_over() const { return connector_.descriptor(); }

SafetyLine::News SafetyLine::adopt() {
  Connector::Taken taken = connector_.take();
  if (taken.standing_back) return News::standing_back;
  if (!taken.session) return News::none;
  session_ = std::move(taken.session);
  adopted_ = Clock::now();
  heard_.reset();
  warned_ = false;
  log::info(fmt::format("Connected to the broker at {}.", settings_.access.address));
  return News::up;
}

bool SafetyLine::receive(Inbound& into) {
  while (session_) {
    const bool got = session_->receive(into);
    collect_acknowledgements();
    if (got && !is_beat(into)) return true;
    if (got) continue;
    if (!session_->alive()) give_up("The connection to the broker is lost. Trying again.");
    return false;
  }
  return false;
}

bool SafetyLine::just_subscribed() const {
  return Clock::now() - adopted_ < burst_after_subscribing;
}

bool SafetyLine::is_beat(const Inbound& message) {
  if (message.topic() != settings_.heartbeat) return false;
  if (message.payload().starts_with(beat_prefix(settings_))) heard_ = Clock::now();
  return true;
}

void SafetyLine::command(room::ActuatorIndex actuator, bool on, const std::string& topic,
                         std::string_view payload, Duration life) {
  if (!session_) return;
  const Held command{on, topic, std::string(payload), life};
  // One more than the window would wait inside the library, and the decision thread with it.
  if (static_cast<int>(sent_.size()) + 1 >= session_->window()) {
    held_.at(actuator) = command;
  } else {
    held_.at(actuator).reset();
    send(actuator, command);
  }
}

void SafetyLine::send(room::ActuatorIndex actuator, const Held& command) {
  const std::optional<int> token =
      session_->publish(command.topic, command.payload, 1, whole_seconds(command.life));
  // If it could not be sent the connection is gone; receive() will find out.
  if (token && session_->version() == 5) sent_.push_back({*token, actuator, command.on});
}

void SafetyLine::collect_acknowledgements() {
  if (session_->acknowledgements().empty()) return;
  for (const Acknowledgement& word : session_->acknowledgements()) {
    const auto sent = std::find_if(sent_.begin(), sent_.end(),
                                   [&](const Sent& s) { return s.token == word.token; });
    if (sent == sent_.end()) continue;
    delivered_.push_back({sent->actuator, sent->on, word.code});
    sent_.erase(sent);
  }
  session_->acknowledgements().clear();
  for (std::size_t i = 0; i < held_.size(); ++i) {
    if (!held_[i]) continue;
    const Held command = *std::exchange(held_[i], std::nullopt);
    send(static_cast<room::ActuatorIndex>(i), command);
  }
}

std::optional<Delivery> SafetyLine::delivered() {
  if (delivered_.empty()) return std::nullopt;
  const Delivery first = delivered_.front();
  delivered_.erase(delivered_.begin());
  return first;
}

void SafetyLine::beat() {
  if (!session_) return;
  const auto now = Clock::now();
  if (heard_ && now - *heard_ > silence_max) {
    give_up("The broker has been silent for 2.5 s: connecting anew.");
    return;
  }
  if (!heard_ && !warned_ && now - adopted_ > silence_max) {
    warned_ = true;
    log::warning(fmt::format(
        "The broker does not return our heartbeat on {}: allow writing and reading it in the "
        "broker's access list. Until then a dead connection is found after 10 s instead of 2.5 s.",
        settings_.heartbeat));
  }
  session_->publish(settings_.heartbeat, fmt::format("{}{}", beat_prefix(settings_), ++beats_), 0,
                    0);
}

void SafetyLine::give_up(std::string_view why) {
  log::warning(why);
  const auto lasted = std::chrono::duration_cast<Milliseconds>(Clock::now() - adopted_);
  session_.reset();
  sent_.clear();
  held_ = {};
  // A short life may mean that another daemon took our name.
  connector_.start(back_off_.wait(lasted), lasted < BackOff::stable);
}

bool SafetyLine::close() {
  session_.reset();
  return connector_.end();
}

}  // namespace tidewright::mqtt
