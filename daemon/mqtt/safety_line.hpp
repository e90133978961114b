// The line on which sensors speak and commands leave. The decision thread owns it and drives it
// from its epoll loop; connecting, which may wait, is done by a helper thread.
// Nothing but commands and the heartbeat is published here.
#pragma once

#include <array>
#include <chrono>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/event.hpp"
#include "daemon/mqtt/back_off.hpp"
#include "daemon/mqtt/connector.hpp"
#include "daemon/mqtt/session.hpp"

namespace tidewright::mqtt {

class SafetyLine {
 public:
  static constexpr std::chrono::milliseconds beat_every{250};
  static constexpr std::chrono::milliseconds silence_max{2'500};

  explicit SafetyLine(SafetySettings settings);

  // Begins to try; from then on it keeps trying for ever.
  void open();

  // Readable when adopt() has something to say.
  int handed_over() const;
  enum class News { none, up, standing_back };
  // up: a new connection is here and subscribed; drain it at once.
  // standing_back: another daemon works under this name; the line waits until that one is gone.
  News adopt();

  bool up() const { return session_ != nullptr; }
  int socket() const { return session_ ? session_->socket() : -1; }
  int version() const { return session_ ? session_->version() : 5; }

  // The next message of an instrument; false when there is none now, or the line went down.
  bool receive(Inbound& into);
  // Within 2 s of subscribing even an unmarked message may be an old one (a bridge may strip the
  // mark).
  bool just_subscribed() const;

  // QoS 1, not retained; dropped by the broker after `life`. While the line is down: nothing.
  void command(room::ActuatorIndex actuator, bool on, const std::string& topic,
               std::string_view payload, Duration life);
  // What the broker said of commands sent (MQTT 5), one by one.
  std::optional<Delivery> delivered();
  // Commands that the broker has not acknowledged yet.
  std::size_t undelivered() const { return sent_.size(); }

  // Every 250 ms, after receive() found nothing more: sends the heartbeat, and gives up a
  // connection on which it does not come back.
  void beat();

  // Before the process ends: closes the connection. False if the helper thread hangs in a call that
  // nothing can end; the process must then leave without it.
  bool close();

 private:
  struct Sent {
    int token;
    room::ActuatorIndex actuator;
    bool on;
  };
  struct Held {
    bool on;
    std::string topic;
    std::string payload;
    Duration life;
  };
  using Clock = std::chrono::steady_clock;

  void send(room::ActuatorIndex actuator, const Held& command);
  void collect_acknowledgements();
  bool is_beat(const Inbound& message);
  void give_up(std::string_view why);

  SafetySettings settings_;
  Connector connector_;
  BackOff back_off_;
  std::unique_ptr<Session> session_;
  Clock::time_point adopted_;
  std::optional<Clock::time_point> heard_;  // the last heartbeat that came back
  bool warned_ = false;
  std::uint64_t beats_ = 0;
  std::vector<Sent> sent_;
  std::vector<Delivery> delivered_;
  std::array<std::optional<Held>, room::actuators_max> held_;  // the window is full
};

}  // namespace tidewright::mqtt
