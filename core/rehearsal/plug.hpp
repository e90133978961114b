// A switched plug: a relay, its own timer, and what it says of itself.
#pragma once

#include <algorithm>
#include <optional>

#include "core/base/instant.hpp"
#include "core/base/units.hpp"
#include "core/room/actuator.hpp"

namespace tidewright::rehearsal {

struct PlugSettings {
  Duration obeys_after{50};     // from the message to the relay
  Duration feedback_lags{200};  // from the relay to the word about it
  Duration feedback_every{0};   // said again though nothing changed; 0 = never
  Watts working{45};
  Watts standby{0.6};
};

// What can go wrong with a plug.
struct PlugFaults {
  bool ignores_on = false;
  bool ignores_off = false;  // a welded relay: the timer cannot open it either
  bool mute = false;         // says nothing of itself
  // Who really switches it off, whatever the file says: it was set up otherwise.
  std::optional<room::LeaseKind> timer;
  std::optional<bool> lies;  // says this of its relay, whatever is so
  Duration lags{0};          // and says it later by so much
};

class Plug {
 public:
  Plug(const room::Actuator& actuator, const PlugSettings& settings)
      : actuator_(&actuator), settings_(settings) {}

  // A command arrives.
  void obey(bool on, Instant now);
  // Somebody presses the button on the plug.
  void press(Instant now);
  // Commands and timers up to `now` take effect.
  void live(Instant now);
  // When live() has something to do next; or never.
  Instant next() const { return std::min(effective_, lease_ends_); }

  // Its timer is as the file says again, and counts from now on.
  void mend_timer(Instant now);
  // It starts anew, as after a power cut, with its relay so.
  void reboot(bool on, Instant now);

  bool on() const { return on_; }
  // When the relay last moved.
  Instant since() const { return since_; }
  // What it says of its relay.
  bool said() const { return faults.lies.value_or(on_); }
  // Whether there is something to say of the relay by now; asking takes it as said.
  bool has_word(Instant now);
  Instant next_word() const { return faults.mute ? never : word_due_; }

  PlugFaults faults;

 private:
  void set(bool on, Instant now);

  const room::Actuator* actuator_;
  PlugSettings settings_;
  bool on_ = false;
  Instant since_ = long_ago;
  bool commanded_ = false;
  Instant effective_ = never;   // when `commanded_` takes effect
  Instant lease_ends_ = never;  // when the plug's own timer opens the relay
  Instant word_due_ = never;
};

}  // namespace tidewright::rehearsal
