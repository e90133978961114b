#include "core/picture/picture.hpp"

#include "core/base/mutant.hpp"
#include "core/ledger/flow.hpp"

namespace tidewright::picture {
namespace {

using room::InstrumentIndex;
using room::Place;
using room::Quantity;

bool says(const state::Signal& signal) { return signal.seen && signal.value >= 0.5; }

// A leak sensor's last word stands for danger however old it is; for a dry floor it must be good.
void see_leaks(const room::Room& room, const state::Signals& signals, Picture& picture) {
  for (std::size_t i = 0; i < room.instruments.size(); ++i) {
    if (room.instruments[i].quantity != Quantity::wetness) continue;
    const state::Signal& signal = signals[i];
    const bool wet = says(signal) && !mutant(Mutant::wet_ignored);
    if (wet && !picture.wet) picture.wet = static_cast<InstrumentIndex>(i);
    if (mutant(Mutant::one_dry_of_two_overrules) && !says(signal)) picture.wet.reset();

    const bool awaited = signal.why == Why::awaiting_after_link || signal.why == Why::retained_only;
    const Watch watch = signal.quality == Quality::good ? Watch::good
                        : awaited                       ? Watch::awaited
                                                        : Watch::lost;
    const bool first = picture.leak_watch == Watch::none_installed;
    if (!first && watch >= picture.leak_watch) continue;
    picture.leak_watch = watch;
    if (watch != Watch::good) picture.leak_doubtful = static_cast<InstrumentIndex>(i);
  }
}

std::optional<InstrumentIndex> find_saying(const room::Room& room, const state::Signals& signals,
                                           Place place) {
  const auto i = room::find(room, Quantity::float_switch, place);
  return i && says(signals[*i]) ? i : std::nullopt;
}

void see_level(const room::Room& room, const state::Signals& signals, Picture& picture) {
  picture.high_high_wet = find_saying(room, signals, Place::vat_high_high);
  picture.float_full = find_saying(room, signals, Place::vat);
  const auto gauge = room::find(room, Quantity::level, Place::vat);
  if (!gauge || !signals[*gauge].seen) return;
  picture.level_doubtful = Litres{signals[*gauge].value};
  if (signals[*gauge].quality == Quality::good) picture.level = picture.level_doubtful;
}

void see_purifier(const room::Room& room, const State& state, Picture& picture) {
  if (!room.purifier) return;
  picture.driving = room::driving(room);
  if (picture.driving) {
    picture.commanded = state.drives[*picture.driving].on;
    picture.working = state.ledger.working[*picture.driving].on;
  }
  const auto temperature = ledger::water_temperature(room, state.signals);
  picture.water_temperature = temperature.value;
  picture.temperature_known = temperature.known;
  picture.flow_expected = ledger::flow_expected(room, temperature.value);
  picture.flow_lowest = picture.flow_expected * room.purifier->flow_lowest_credible;

  picture.product = judge_samples(room, state.ledger.product);
  const auto permeate = judge_samples(room, state.ledger.permeate);
  const auto feed = room::find(room, Quantity::dissolved_solids, Place::feed);
  if (permeate && feed && state.signals[*feed].quality == Quality::good &&
      state.signals[*feed].value > 0) {
    picture.rejection = 1 - permeate->ppm.value / state.signals[*feed].value;
  }
}

}  // namespace

Picture draw(const room::Room& room, const State& state) {
  Picture picture{.room = room,
                  .circumstances = state.circumstances,
                  .signals = state.signals,
                  .ledger = state.ledger,
                  .make_water = state.make_water,
                  .drives = state.drives,
                  .latches = state.latches,
                  .findings = state.findings,
                  .now = state.circumstances.now};
  see_leaks(room, state.signals, picture);
  see_level(room, state.signals, picture);
  see_purifier(room, state, picture);
  return picture;
}

std::optional<bool> confirmed(const Picture& picture, room::ActuatorIndex actuator) {
  const auto i = room::find(picture.room, Quantity::feedback, actuator);
  if (!i || picture.signals[*i].quality != Quality::good) return std::nullopt;
  return picture.signals[*i].value >= 0.5;
}

std::optional<Watts> power(const Picture& picture, room::ActuatorIndex actuator) {
  const auto i = room::find(picture.room, Quantity::power, actuator);
  if (!i || picture.signals[*i].quality != Quality::good) return std::nullopt;
  return Watts{picture.signals[*i].value};
}

}  // namespace tidewright::picture
