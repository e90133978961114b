#include "core/picture/proof_due.hpp"

namespace tidewright::picture {
namespace {

using namespace std::chrono_literals;

constexpr Duration sensor_tried_every = std::chrono::days{91};
constexpr Duration lease_tried_every = std::chrono::days{7};

Instant due(const Picture& picture, Instant last, Duration every) {
  return last == long_ago ? picture.proofs.installed : last + every;
}

}  // namespace

Instant sensor_test_due(const Picture& picture, room::InstrumentIndex i) {
  if (!room::is_tried_by_hand(picture.room.instruments[i])) return never;
  return due(picture, picture.proofs.instruments[i].at, sensor_tried_every);
}

Instant lease_test_due(const Picture& picture, room::ActuatorIndex i) {
  const bool kept = picture.room.actuators[i].lease_kind != room::LeaseKind::none;
  if (!kept || !room::find(picture.room, room::Quantity::feedback, i)) return never;
  return due(picture, picture.lease_tests[i].proved, lease_tried_every);
}

}  // namespace tidewright::picture
