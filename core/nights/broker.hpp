// The pretend broker: carries words from the room to the daemon and commands from the daemon to the
// plugs, late, twice, in the wrong order or not at all. Called by run.cpp only.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <utility>

#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/rehearsal/chance.hpp"
#include "core/room/room.hpp"

namespace tidewright::nights {

// What can go wrong on the way.
struct BrokerFaults {
  bool half_open = false;  // the line looks up, and nothing passes
  double lost_to_daemon = 0;
  double lost_to_plugs = 0;
  double doubled = 0;
  Duration late{0};  // a word may come later by up to this, and overtaken by its successors
  Duration slow{0};  // all comes later by this, in order
  std::array<bool, room::instruments_max> cut{};            // this one's words are lost
  std::array<std::uint8_t, room::actuators_max> refuses{};  // code for this one's commands
};

class Broker {
 public:
  Broker(const room::Room&, Duration latency, bool retains, std::uint64_t seed);

  // An instrument or plug of the room says something.
  void hear(const Event& word);
  // The daemon publishes a command.
  void take(const Command&, Instant now);

  // The daemon's session. What was under way to it is lost with the session.
  void connect(Instant now);
  void disconnect();
  bool connected() const { return connected_; }

  // When something is due for somebody.
  Instant next() const;
  Instant next_for_plugs() const { return to_plugs_.empty() ? never : to_plugs_.begin()->first; }
  // What is due by now; each once.
  std::optional<Event> for_daemon(Instant now);
  std::optional<Command> for_plug(Instant now);

  // Puts a message of anybody's under way to the daemon, as if it had been published at `at`.
  void forge(const Event& word, Instant at);
  // The last words that the broker keeps.
  std::array<std::optional<Reading>, room::instruments_max> kept{};
  void forget() { kept = {}; }

  BrokerFaults faults;

 private:
  struct Outgoing {
    Command command;
    Instant sent;
  };
  void deliver(const Event& word);
  void deliver_kept(Instant now);

  Duration latency_;
  bool retains_;
  rehearsal::Chance chance_;
  bool connected_ = false;
  Instant connected_at_ = long_ago;
  std::array<bool, room::instruments_max> online_{};
  Instant last_for_daemon_ = long_ago;
  Instant last_for_plugs_ = long_ago;
  std::multimap<Instant, Event> to_daemon_;
  std::multimap<Instant, Outgoing> to_plugs_;
};

}  // namespace tidewright::nights
