#include "core/picture/proof_due.hpp"

namespace tidewright::picture {
namespace {

using room::LeaseKind;
using room::Quantity;

constexpr Duration by_person_every = std::chrono::days{91};
constexpr Duration by_itself_every = std::chrono::days{7};

Instant due(const Picture& picture, const state::Proof& last, Duration every) {
  return last.at == long_ago ? picture.proofs.installed : last.at + every;
}

}  // namespace

bool lease_can_be_tried(const room::Room& room, room::ActuatorIndex i) {
  return room.actuators[i].lease_kind != LeaseKind::none &&
         room::find(room, Quantity::feedback, i).has_value();
}

bool lease_is_tried_by_itself(const room::Room& room, room::ActuatorIndex i) {
  const room::Actuator& actuator = room.actuators[i];
  const bool gauge = room.vat && room.vat->stop_at &&
                     room::find(room, Quantity::level, room::Place::vat).has_value();
  return gauge && lease_can_be_tried(room, i) && facts(actuator.role).makes_water &&
         actuator.lease_kind != LeaseKind::plug_fixed;
}

Instant sensor_test_due(const Picture& picture, room::InstrumentIndex i) {
  if (!room::is_tried_by_hand(picture.room.instruments[i])) return never;
  return due(picture, picture.proofs.instruments[i], by_person_every);
}

Instant lease_test_due(const Picture& picture, room::ActuatorIndex i) {
  if (!lease_can_be_tried(picture.room, i)) return never;
  const bool by_itself = lease_is_tried_by_itself(picture.room, i);
  return due(picture, picture.lease_tests.results[i],
             by_itself ? by_itself_every : by_person_every);
}

}  // namespace tidewright::picture
