// The fill was switched off and goes on all the same: the level still rises, or power still flows.
#include <algorithm>

#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

constexpr Duration run_down = 2min;  // the membrane's housing empties itself after OFF

// A rise that neither one flicker of the gauge, nor its noise, nor the run-down explains.
Litres rise_credible(const picture::Picture& picture) {
  const auto level = room::find(picture.room, room::Quantity::level, room::Place::vat);
  const double step = level ? picture.room.instruments[*level].step : 0;
  const double noise = 6 * picture.ledger.noise.spread.value;
  return {std::max({3 * step, noise, 0.01 * picture.room.vat->capacity.value})};
}

Judgement judge(const picture::Picture& picture) {
  if (!picture.driving || picture.commanded) return {};
  const room::ActuatorIndex driving = *picture.driving;
  const Duration off_for = picture.now - picture.drives[driving].commanded;
  if (off_for < run_down) {
    return {Verdict::unknown, {}, picture.drives[driving].commanded + run_down};
  }

  // Feedback that says ON is the matter of actuator_disobeys; here power contradicts it.
  const auto watts = picture::power_doubtful(picture, driving);
  const bool draws = watts && *watts >= picture.room.actuators[driving].idle_below;
  if (draws && picture::confirmed(picture, driving) != true) {
    return {
        Verdict::on, {Why::runs_after_off, driving, {static_cast<float>(seconds(off_for))}}, never};
  }

  // Where only the pump stops, or nothing, line pressure may go on filling until the float closes.
  if (picture.room.purifier->water_stops_with != room::WaterStopsWith::valve) return {};
  if (!picture.room.vat) return {};
  if (!picture.level || !picture.ledger.level.known) return {Verdict::unknown, {}};
  // The peak does not flicker as the gauge does.
  const Litres risen = picture.ledger.level.peak - picture.ledger.level.at_off;
  const bool still_rising = picture.ledger.level.rate.value > 0 &&
                            picture.now - picture.ledger.level.moved < Duration{1h};
  if (risen < rise_credible(picture) || !still_rising) return {};
  return {Verdict::on,
          {Why::level_rises_after_off,
           no_subject,
           {static_cast<float>(risen.value), static_cast<float>(seconds(off_for) / 60)}},
          never};
}

bool applies(const room::Room& room) {
  if (!room.purifier || room.purifier->driven_by >= room.actuators.size()) return false;
  const bool level = room::find(room, room::Quantity::level, room::Place::vat).has_value() &&
                     room.purifier->water_stops_with == room::WaterStopsWith::valve;
  return level || room::find(room, room::Quantity::power, room.purifier->driven_by).has_value();
}

}  // namespace

extern const Rule fill_not_stopping{
    .id = room::RuleId::fill_not_stopping,
    .name = "fill_not_stopping",
    .title = "The fill does not stop",
    .priority = Priority::urgent,
    .latching = Latching::at_once,
    .respond_within = 10min,
    .on_delay = 1min,
    .off_delay = 2min,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "the gauge after OFF, and the plug's power meter",
        .limit =
            "2 min after OFF the level has risen by 3 gauge steps, 6 times the scatter of its "
            "readings or 1 % of the vat, whichever is most, and still rises (only where a valve "
            "stops the water); or the plug still draws power",
        .origin =
            "our own choice: the gauge's own steps, and the time that hoses take to run empty",
        .causes = "a valve that does not close, a relay that is welded shut, a hose put into the "
                  "vat",
        .consequence = "the vat runs over soon",
        .action = "Pull the pump's plug and close the feed cock by hand. Find out what kept the "
                  "water running, then reset",
        .automatic = "OFF is sent again, and every other pump and valve is switched off; all stay "
                     "off until a person resets",
        .test = "open the valve by hand after a fill: the alarm must come"}};

}  // namespace tidewright::rules
