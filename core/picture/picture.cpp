#include "core/picture/picture.hpp"

#include <algorithm>
#include <chrono>

#include "core/base/mutant.hpp"
#include "core/ledger/flow.hpp"
#include "core/signal/ruling.hpp"
#include "core/signal/water_meter.hpp"

namespace tidewright::picture {
namespace {

// From the command to a motor at its work, and a plug that says so. [choice]
constexpr Duration work_begins_within = std::chrono::seconds{10};

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

void see_gauge(const room::Room& room, const state::Signals& signals, Place place,
               std::optional<Litres>& good, std::optional<Litres>& doubtful) {
  const auto highest = signal::most_dangerous(room, signals, Quantity::level, place);
  const auto gauge = signal::ruling(room, signals, Quantity::level, place);
  if (!gauge || !signals[*highest].seen) return;
  doubtful = Litres{signals[*highest].value};
  if (signals[*gauge].quality == Quality::good) good = Litres{signals[*gauge].value};
}

void see_level(const room::Room& room, const state::Signals& signals, Picture& picture) {
  picture.high_high_wet = find_saying(room, signals, Place::vat_high_high);
  picture.float_full = find_saying(room, signals, Place::vat);
  picture.concentrate_full = find_saying(room, signals, Place::concentrate);
  see_gauge(room, signals, Place::vat, picture.level, picture.level_doubtful);
  see_gauge(room, signals, Place::mixing_vat, picture.mixing_level, picture.mixing_level_doubtful);
}

// Two steps of a count, or what no drop from a hose makes. [choice]
Litres loose_from(const room::Instrument& meter) {
  const bool counts = meter.quantity == Quantity::water_count;
  return Litres{std::max(0.5, counts ? 2 * meter.step : 0)};
}

void see_loose_water(const room::Room& room, const State& state, Picture& picture) {
  const bool held = room.purifier && room.purifier->water_stops_with == room::WaterStopsWith::valve;
  const Instant quiet = state.comparison.quiet;
  if (!held || quiet == never || picture.now - quiet < signal::run_down) return;
  for (const Place place : state::metered_places) {
    const auto meter = signal::water_meter(room, state.signals, place);
    if (!meter) continue;
    const state::WaterMeter& water = state.comparison.water[signal::metered(place)];
    const Litres litres = water.passed - water.at_quiet;
    if (litres < loose_from(room.instruments[*meter])) continue;
    picture.loose_water = LooseWater{*meter, litres, picture.now - quiet, water.flowed};
    return;
  }
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
  const auto feed = signal::ruling(room, state.signals, Quantity::dissolved_solids, Place::feed);
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
                  .comparison = state.comparison,
                  .ledger = state.ledger,
                  .make_water = state.make_water,
                  .lease_tests = state.lease_tests,
                  .bypasses = state.bypasses,
                  .proofs = state.proofs,
                  .drives = state.drives,
                  .latches = state.latches,
                  .findings = state.findings,
                  .now = state.circumstances.now};
  see_leaks(room, state.signals, picture);
  see_level(room, state.signals, picture);
  see_loose_water(room, state, picture);
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

std::optional<Watts> power_at_work(const Picture& picture, room::ActuatorIndex actuator) {
  const auto watts = power(picture, actuator);
  const state::Drive& drive = picture.drives[actuator];
  if (!watts || !drive.on) return std::nullopt;
  const auto i = *room::find(picture.room, Quantity::power, actuator);
  const Instant measured =
      picture.room.instruments[i].on_change ? picture.now : picture.signals[i].received;
  // A pump that waits for a slow valve does no work yet.
  Duration slowest{0};
  for (const room::Actuator& other : picture.room.actuators) {
    slowest = std::max(slowest, other.travel);
  }
  return measured - drive.commanded >= slowest + work_begins_within ? watts : std::nullopt;
}

std::optional<Watts> power_doubtful(const Picture& picture, room::ActuatorIndex actuator) {
  const auto i = room::find(picture.room, Quantity::power, actuator);
  if (!i || !picture.signals[*i].live || picture.signals[*i].quality == Quality::bad) {
    return std::nullopt;
  }
  return Watts{picture.signals[*i].value};
}

std::optional<LitresPerHour> flow(const Picture& picture, room::Place place) {
  const auto i = signal::water_meter(picture.room, picture.signals, place);
  if (!i || picture.signals[*i].quality != Quality::good) return std::nullopt;
  return picture.comparison.water[signal::metered(place)].rate;
}

}  // namespace tidewright::picture
