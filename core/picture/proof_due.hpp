// When each proof test is due again. Common practice, no source: three months for what a person
// tries, a week for what the daemon tries by itself.
#pragma once

#include "core/picture/picture.hpp"

namespace tidewright::picture {

// Somebody keeps the lease, and the feedback shows whether.
bool lease_can_be_tried(const room::Room&, room::ActuatorIndex);
// At the end of a fill, where a gauge shows that it is near, and an ON begins the lease anew.
bool lease_is_tried_by_itself(const room::Room&, room::ActuatorIndex);

// What was never done is due from the first start on; never: there is nothing to try.
Instant sensor_test_due(const Picture&, room::InstrumentIndex);
Instant lease_test_due(const Picture&, room::ActuatorIndex);

}  // namespace tidewright::picture
