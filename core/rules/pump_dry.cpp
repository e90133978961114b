// The pump is switched on and there is no pressure before it; or it does no work, and the vat is
// not full: nothing comes in from the feed, or the pump is blocked.
#include "core/rules/rule.hpp"
#include "core/signal/ruling.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

// So near STOP that the mechanical float valve may have closed.
bool near_float(const picture::Picture& picture) {
  const room::Vat& vat = *picture.room.vat;
  return *picture.level >= vat.stop_at.value_or(vat.capacity) * room::float_closes_from;
}

// Low pressure is a danger, and believed at any quality but garbage.
Judgement judge_pressure(const picture::Picture& picture) {
  const auto gauge = signal::most_dangerous(picture.room, picture.signals, room::Quantity::pressure,
                                            room::Place::feed);
  if (!gauge) return {};
  const state::Signal& signal = picture.signals[*gauge];
  if (signal.quality == Quality::bad) return {Verdict::unknown, {}};
  const double low = picture.room.purifier->feed_pressure_low.value;
  if (signal.value >= low) return {};
  return {Verdict::on,
          {Why::pressure_low, *gauge, {static_cast<float>(signal.value), static_cast<float>(low)}},
          never};
}

Judgement judge(const picture::Picture& picture) {
  if (!picture.driving || !picture.commanded) return {};
  const room::ActuatorIndex driving = *picture.driving;
  const Judgement pressed = judge_pressure(picture);
  const bool metered = room::find(picture.room, room::Quantity::power, driving).has_value();
  if (pressed.verdict == Verdict::on || !metered) return pressed;
  const auto watts = picture::power_at_work(picture, driving);
  const Watts idle = picture.room.actuators[driving].idle_below;
  if (!watts) return {Verdict::unknown, {}};
  if (*watts >= idle) return {};
  // Near STOP the mechanical float closes first and the pressure switch stops the pump: full.
  // Without a gauge the two cannot be told apart.
  if (picture.float_full || !picture.level || near_float(picture)) return {};
  return {Verdict::on,
          {Why::no_power,
           driving,
           {static_cast<float>(watts->value), static_cast<float>(idle.value),
            static_cast<float>(picture.level->value)}},
          never};
}

bool applies(const room::Room& room) {
  using room::Place;
  using room::Quantity;
  if (!room.purifier || room.purifier->driven_by >= room.actuators.size()) return false;
  const bool power = room::find(room, Quantity::power, room.purifier->driven_by) &&
                     room::find(room, Quantity::level, Place::vat);
  return power || room::find(room, Quantity::pressure, Place::feed);
}

}  // namespace

extern const Rule pump_dry{
    .id = room::RuleId::pump_dry,
    .name = "pump_dry",
    .title = "The pump does not work",
    .priority = Priority::soon,
    .latching = Latching::on_repeat,
    .respond_within = 24h,
    .on_delay = 15s,     // the pressure dips where a pump starts
    .off_delay = 30min,  // the time until the next try
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "the feed pressure, and the power that the pump's plug draws",
        .limit = "ON for 15 s with the feed pressure under `feed_pressure_low`; or with the plug's "
                 "power under the idle figure of the file and the vat not near STOP",
        .origin = "common practice: low-pressure switches of booster pumps open at about 0.3 bar; "
                  "the idle figure is the household's",
        .causes = "a closed feed cock, low feed pressure, a clogged prefilter, a blocked or burnt "
                  "pump",
        .consequence = "no water is made; the pump is damaged",
        .action = "Open the feed cock. Check the prefilter and the feed pressure, listen to the "
                  "pump",
        .automatic = "the pump stops; it is tried again 5 times a day, then it stays off until a "
                     "person resets",
        .test = "close the feed cock in a fill: the pump must stop"}};

}  // namespace tidewright::rules
