// One room and the function that decides for it. Every event goes through happen(): step, then
// commands at once, then all that may wait. Lives on the decision thread alone.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "config/household.hpp"
#include "core/step.hpp"
#include "daemon/clock.hpp"
#include "daemon/intake/intake.hpp"
#include "daemon/intake/topics.hpp"
#include "daemon/mqtt/safety_line.hpp"
#include "daemon/reporter.hpp"
#include "daemon/store/store.hpp"

namespace tidewright {

// What a decision reaches out to. All of it outlives the decision.
struct Surroundings {
  const config::Household& household;
  const Clock& clock;
  store::Store& store;
  mqtt::SafetyLine& line;
  Reporter& reporter;
};

class Decision {
 public:
  explicit Decision(const Surroundings& around);

  // The first call.
  void start();
  // `raw`: the payload that the event was made of, for the journal.
  void happen(const decltype(Event::what)& what, std::string_view raw = {});
  // A message of an instrument; anything else is passed over.
  void hear(const mqtt::Inbound& message);
  // What the broker said of a command.
  void told(const Delivery& delivery);
  // The disk has got further.
  void committed();
  // Every 250 ms: what need not happen at once.
  void rest();
  // Whether the reporter has yet to be given what happened last; then glance() is due soon.
  bool has_news() const { return draft_.has_value() || !shown_; }
  // Gives it to the reporter, if a restart would know of it.
  void glance();
  // The last call: the present state is shown, whatever the disk says.
  void part();

  // When Tick is due.
  Instant due() const { return due_; }

 private:
  struct Payloads {
    std::string on;
    std::string off;
  };
  struct Held {
    std::uint64_t sequence;
    Announcement announcement;
    State state;  // as of then
  };
  // What is to be shown once a restart would know of it: a total that was published never falls.
  struct Draft {
    std::uint64_t sequence = 0;
    State state;
    int beats_waited = 0;
  };
  void command(const Command& command);
  void carry_out_the_rest();
  void show();
  void hand_over();
  void tell_held(std::uint64_t up_to);
  void doubt_the_disk();
  const State& newest(std::uint64_t sequence, const State& state);
  void judge(const intake::Target& target, const intake::Message& message);
  void refuse(room::InstrumentIndex instrument, intake::Refused why, std::string_view raw);

  Surroundings around_;
  intake::Topics topics_;
  std::vector<Payloads> payloads_;  // one for each actuator
  State state_;
  Effects effects_;
  Instant due_ = long_ago;
  std::uint64_t sequence_ = 0;  // of the last event
  bool recording_ = true;
  bool shown_ = true;  // the present state is on its way to the reporter
  std::optional<Draft> draft_;
  Draft told_;              // the newest that the reporter was given: what is seen never goes back
  std::vector<Held> held_;  // announcements whose latch is not on the disk yet
  int beats_held_ = 0;      // since the first of them came, or one was told
};

}  // namespace tidewright
