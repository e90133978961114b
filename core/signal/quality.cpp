#include "core/signal/quality.hpp"

namespace tidewright::signal {
namespace {

bool alike(const room::Instrument& one, const room::Instrument& other) {
  return one.quantity == other.quantity && one.place == other.place && one.subject == other.subject;
}

}  // namespace

void lose(state::Signal& signal, Quality quality, DeviceStatus status, Why why, Instant now) {
  if (signal.quality == Quality::good) signal.lost = now;
  signal.quality = quality;
  signal.status = status;
  signal.why = why;
  signal.good_in_a_row = 0;
}

void find_good(state::Signal& signal) {
  signal.quality = Quality::good;
  signal.status = DeviceStatus::normal;
  signal.why = Why::nothing;
  count(signal.good_in_a_row);
}

void refuse(state::Signal& signal, Why why, Instant now) {
  count(signal.refused);
  count(signal.refused_in_a_row);
  if (signal.refused_in_a_row >= 2) lose(signal, Quality::bad, DeviceStatus::failure, why, now);
}

bool is_sound(const state::Signal& signal) {
  if (!signal.live) return false;
  const bool only_doubted = signal.doubt != Why::nothing && signal.why == signal.doubt;
  return signal.quality == Quality::good || only_doubted;
}

void doubt(state::Signal& signal, Why why, std::uint8_t against, double a, double b, Instant now) {
  const bool free = signal.doubt == Why::nothing || signal.doubt == why;
  if (!free && why != Why::below_the_float) return;
  const bool sound = is_sound(signal);
  signal.doubt = why;
  signal.against = against;
  signal.doubt_numbers = {static_cast<float>(a), static_cast<float>(b)};
  if (sound) apply_doubt(signal, now);
}

void trust(state::Signal& signal, Why why) {
  if (signal.doubt != why) return;
  const bool only_doubted = signal.why == signal.doubt;
  signal.doubt = Why::nothing;
  signal.against = no_subject;
  signal.doubt_numbers = {};
  if (only_doubted) find_good(signal);
}

void doubt_all_like(const room::Room& room, state::Signals& signals, room::InstrumentIndex like,
                    Why why, std::uint8_t against, double a, double b, Instant now) {
  for (std::size_t i = 0; i < room.instruments.size(); ++i) {
    if (!alike(room.instruments[i], room.instruments[like])) continue;
    doubt(signals[i], why, against, a, b, now);
  }
}

void trust_all_like(const room::Room& room, state::Signals& signals, room::InstrumentIndex like,
                    Why why) {
  for (std::size_t i = 0; i < room.instruments.size(); ++i) {
    if (alike(room.instruments[i], room.instruments[like])) trust(signals[i], why);
  }
}

void apply_doubt(state::Signal& signal, Instant now) {
  switch (signal.doubt) {
    case Why::below_the_float:
      return lose(signal, Quality::bad, DeviceStatus::failure, signal.doubt, now);
    case Why::flat_line:
      return lose(signal, Quality::uncertain, DeviceStatus::maintenance_required, signal.doubt,
                  now);
    default:
      return lose(signal, Quality::uncertain, DeviceStatus::out_of_specification, signal.doubt,
                  now);
  }
}

}  // namespace tidewright::signal
