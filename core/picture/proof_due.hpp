// When each proof test is due again. Common practice, no source: three months for what a person
// tries, a week for what the daemon tries by itself.
#pragma once

#include "core/picture/picture.hpp"

namespace tidewright::picture {

// Of an instrument that is tried by hand, of an actuator whose lease can be tried; else never. What
// was never done is due from the first start on.
Instant sensor_test_due(const Picture&, room::InstrumentIndex);
Instant lease_test_due(const Picture&, room::ActuatorIndex);

}  // namespace tidewright::picture
