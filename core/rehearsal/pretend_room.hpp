// The pretend water room: truth behind the instruments of a household's room. It obeys commands as
// plugs do and speaks as sensors do, with physics of its own, so that it can prove the daemon
// wrong. Used by the month simulations, the scenarios and the program that speaks MQTT.
#pragma once

#include <vector>

#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/rehearsal/settings.hpp"
#include "core/rehearsal/voice.hpp"
#include "core/rehearsal/works.hpp"
#include "core/room/room.hpp"

namespace tidewright::rehearsal {

class PretendRoom {
 public:
  // `room` must outlive it. Same seed, same room: same words for ever.
  PretendRoom(const room::Room& room, const Settings&, std::uint64_t seed, Instant begins);

  // Lives until `to`, or until something is said if that is sooner; returns that instant. What was
  // said (Reading, Refusal, Availability) is appended to `said`, all of it at that instant.
  Instant advance(Instant to, std::vector<Event>& said);
  // A command reaches its plug now.
  void obey(const Command&);

  Instant now() const { return now_; }
  Works& works() { return works_; }
  const Works& works() const { return works_; }
  Plug& plug(room::ActuatorIndex i) { return plugs_[i]; }
  const Plug& plug(room::ActuatorIndex i) const { return plugs_[i]; }
  Voice& voice(room::InstrumentIndex i) { return voices_[i]; }
  Celsius temperature() const { return rehearsal::temperature(settings_.weather, now_); }
  // A puddle that reaches a leak sensor's two contacts.
  bool floor_is_wet() const { return works_.floor() > Litres{0.02}; }
  Litres float_switch_at() const { return works_.vat().capacity() * settings_.float_switch_at; }
  // Time that the plug has been ON, in all.
  Duration on_time(room::ActuatorIndex i) const { return on_time_[i]; }

  // What a perfect instrument would say now.
  double truth(const room::Instrument&) const;

 private:
  Driven driven() const;
  Instant next_due() const;
  void live(Duration);
  std::optional<Utterance> word_of(room::InstrumentIndex);
  void speak(std::vector<Event>& said);
  void take_water(Duration);

  const room::Room* room_;
  Settings settings_;
  Instant begins_;
  Instant now_;
  Works works_;
  std::vector<Plug> plugs_;
  std::vector<Voice> voices_;
  std::vector<Duration> on_time_;
};

}  // namespace tidewright::rehearsal
