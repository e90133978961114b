#include "core/rehearsal/pretend_room.hpp"

#include <algorithm>
#include <chrono>

namespace tidewright::rehearsal {
namespace {

using room::Instrument;
using room::Place;
using room::Quantity;

// Of the vat that it measures.
Litres capacity_around(const Instrument& gauge, const room::Room& room) {
  if (gauge.place == Place::mixing_vat) {
    return room.mixing_vat ? room.mixing_vat->capacity : Litres{0};
  }
  return room.vat ? room.vat->capacity : Litres{0};
}

// Noise and steps of cheap instruments: common practice, no source.
VoiceSettings voice_settings(const Instrument& instrument, const room::Room& room,
                             const Settings& settings) {
  VoiceSettings voice;
  voice.step = instrument.step;
  voice.lost = settings.messages_lost;
  switch (instrument.quantity) {
    case Quantity::level:
      voice.noise = settings.level_noise * capacity_around(instrument, room).value;
      break;
    case Quantity::dissolved_solids:
      voice.noise = 0.15;
      voice.relative_noise = 0.01;
      if (voice.step <= 0) voice.step = 1;
      break;
    case Quantity::temperature:
      voice.noise = 0.05;
      if (voice.step <= 0) voice.step = 0.1;
      break;
    case Quantity::power:
      voice.relative_noise = 0.02;
      if (voice.step <= 0) voice.step = 0.1;
      break;
    case Quantity::flow:
      voice.relative_noise = 0.03;
      if (voice.step <= 0) voice.step = 0.1;
      break;
    case Quantity::pressure:
      voice.noise = 0.02;
      break;
    default:
      break;
  }
  return voice;
}

}  // namespace

PretendRoom::PretendRoom(const room::Room& room, const Settings& settings, std::uint64_t seed,
                         Instant begins)
    : room_(&room),
      settings_(settings),
      begins_(begins),
      now_(begins),
      works_(room, settings.works),
      on_time_(room.actuators.size(), Duration{0}) {
  Chance chance(seed);
  for (std::size_t i = 0; i < room.actuators.size(); ++i) {
    plugs_.emplace_back(room.actuators[i], settings.plug);
    // A plug whose feedback nobody listens to has nothing to say.
    const auto index = static_cast<room::ActuatorIndex>(i);
    plugs_[i].faults.mute = !room::find(room, Quantity::feedback, index);
  }
  for (const Instrument& instrument : room.instruments) {
    voices_.emplace_back(instrument, voice_settings(instrument, room, settings), chance.bits(),
                         begins);
  }
}

void PretendRoom::obey(const Command& command) { plugs_[command.actuator].obey(command.on, now_); }

Driven PretendRoom::driven() const {
  const room::ActuatorIndex driver = room_->purifier ? room_->purifier->driven_by : no_subject;
  // Nothing switched: the float valve alone keeps the vat, as in most homes.
  bool pump = driver < plugs_.size() ? plugs_[driver].on() : true;
  bool open = pump || !room_->purifier ||
              room_->purifier->water_stops_with == room::WaterStopsWith::nothing;
  // What is not installed is as it says: without a fill valve the way into the vat is free.
  const auto on = [this](room::Role role, bool without) {
    const auto i = room::find(*room_, role);
    return i ? plugs_[*i].on() : without;
  };
  using room::Role;
  return {.pump = on(Role::booster_pump, pump),
          .open = on(Role::feed_valve, open),
          .fill_open = on(Role::fill_valve, true),
          .diverts = on(Role::divert_valve, false),
          .flushes = on(Role::flush_valve, false),
          .transfers = on(Role::transfer_pump, false),
          .heats = on(Role::heater, false)};
}

double PretendRoom::truth(const Instrument& instrument) const {
  const Litres capacity = works_.vat().capacity();
  switch (instrument.quantity) {
    case Quantity::wetness:
      return floor_is_wet() ? 1 : 0;
    case Quantity::level:
      if (instrument.place == Place::mixing_vat && works_.mixing()) {
        return works_.mixing()->holding().value;
      }
      return works_.vat().holding().value;
    case Quantity::float_switch: {
      if (instrument.place == Place::concentrate) return 0;  // somebody empties it
      const double mark = instrument.place == Place::vat_high_high ? settings_.high_high_at
                                                                   : settings_.float_switch_at;
      return works_.vat().holding() >= capacity * mark ? 1 : 0;
    }
    case Quantity::dissolved_solids: {
      // Water in touch with air takes up carbon dioxide: about 1 uS/cm, half a ppm (from memory).
      const double air = instrument.place == Place::product ? 0.3 : 0;
      return works_.solids(instrument.place).value + air;
    }
    case Quantity::temperature:
      if (instrument.place == Place::mixing_vat && works_.mixing()) {
        return works_.mixing()->temperature().value;
      }
      return temperature().value;
    case Quantity::power: {
      const bool on = plugs_[instrument.subject].on();
      const bool pump = room_->actuators[instrument.subject].role == room::Role::booster_pump;
      if (!on) return 0;
      return (pump && !works_.pump_turns() ? settings_.plug.standby : settings_.plug.working).value;
    }
    case Quantity::feedback:
      return plugs_[instrument.subject].on() ? 1 : 0;
    case Quantity::flow:
      return works_.flow_at(instrument.place).value;
    case Quantity::water_count:
      return works_.passed(instrument.place).value;
    case Quantity::pressure:
      return works_.feed_shut ? 0 : 3;  // bar, as the mains give it
  }
  return 0;
}

Instant PretendRoom::next_due() const {
  const Driven drive = driven();
  const bool moving = works_.flow_at(Place::feed).value > 0 || drive.pump ||
                      works_.burst.value > 0 || drive.transfers || drive.heats;
  Instant due = now_ + (moving ? std::chrono::seconds{5} : std::chrono::seconds{60});
  for (const Plug& plug : plugs_) due = std::min({due, plug.next(), plug.next_word()});
  for (const Voice& voice : voices_) due = std::min(due, voice.next());
  return std::max(due, now_ + Duration{1});
}

void PretendRoom::take_water(Duration lasting) {
  works_.draw(settings_.top_off_per_day * (hours(lasting) / 24));
  // A water change takes 20 minutes, on the seventh evening of each week.
  const double hour = hours(now_ - begins_);
  const double week = 7 * 24;
  const double since = hour - week * static_cast<double>(static_cast<int>(hour / week)) - 6.8 * 24;
  const double change_hours = 20.0 / 60;
  if (since < 0 || since >= change_hours) return;
  works_.draw(settings_.weekly_change * (hours(lasting) / change_hours));
}

void PretendRoom::live(Duration lasting) {
  works_.live(lasting, driven(), temperature());
  take_water(lasting);
  for (std::size_t i = 0; i < plugs_.size(); ++i) {
    if (plugs_[i].on()) on_time_[i] += lasting;
  }
  now_ += lasting;
  for (Plug& plug : plugs_) plug.live(now_);
}

std::optional<Utterance> PretendRoom::word_of(room::InstrumentIndex index) {
  const Instrument& instrument = room_->instruments[index];
  Voice& voice = voices_[index];
  if (instrument.quantity != Quantity::feedback) return voice.speak(truth(instrument), now_);
  // A plug speaks of its relay when it has moved, a little late; besides, at its own intervals.
  Plug& plug = plugs_[instrument.subject];
  const bool moved = plug.has_word(now_);
  const double said = plug.said() ? 1 : 0;
  if (now_ >= voice.next()) return voice.speak(said, now_);
  if (!moved || voice.faults.silent) return std::nullopt;
  return Utterance{!voice.faults.garbage, said};
}

void PretendRoom::speak(std::vector<Event>& said) {
  for (std::size_t i = 0; i < voices_.size(); ++i) {
    const auto index = static_cast<room::InstrumentIndex>(i);
    const std::optional<Utterance> word = word_of(index);
    if (const auto online = voices_[i].availability(now_)) {
      said.push_back({now_, Availability{index, *online}});
    }
    if (!word) continue;
    if (word->understood) {
      said.push_back({now_, Reading{index, word->value, Arrival::live, long_ago}});
    } else {
      said.push_back({now_, Refusal{index}});
    }
  }
}

Instant PretendRoom::advance(Instant to, std::vector<Event>& said) {
  const std::size_t before = said.size();
  for (;;) {
    speak(said);
    if (said.size() > before || now_ >= to) return now_;
    live(std::min(to, next_due()) - now_);
  }
}

}  // namespace tidewright::rehearsal
