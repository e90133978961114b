#include "core/picture/picture.hpp"
#include "core/report/report.hpp"
#include "core/report/things.hpp"
#include "core/rules/catalogue.hpp"

namespace tidewright::report {

Report describe(const room::Room& room, const State& state) {
  const picture::Picture picture = picture::draw(room, state);
  Report report{state.circumstances.now, state.circumstances.wall, {}};
  if (room.vat) report.things.push_back(vat(picture));
  if (room.mixing_vat) report.things.push_back(mixing_vat(picture));
  if (room.purifier) report.things.push_back(purifier(picture));
  if (room.purifier && room.purifier->lead_resin) report.things.push_back(resin(picture));
  for (std::size_t i = 0; i < room.actuators.size(); ++i) {
    report.things.push_back(actuator(picture, static_cast<room::ActuatorIndex>(i)));
  }
  for (const rules::Rule* rule : rules::catalogue) {
    if (rule->applies(room)) report.things.push_back(alarm(room, state, rule->id));
  }
  for (std::size_t i = 0; i < room.instruments.size(); ++i) {
    report.things.push_back(source(picture, static_cast<room::InstrumentIndex>(i)));
  }
  for (std::size_t i = 0; i < room.supplies.size(); ++i) {
    report.things.push_back(supply(picture, static_cast<room::SupplyIndex>(i)));
  }
  report.things.push_back(ledger(picture));
  report.things.push_back(protection(picture));
  if (rules::rule(room::RuleId::water_balance_off).applies(room)) {
    report.things.push_back(balance(picture));
  }
  return report;
}

}  // namespace tidewright::report
