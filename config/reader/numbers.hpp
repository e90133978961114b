// What holds of instruments that show a number: units, ranges, calibration. Inside of
// add_instrument only.
#pragma once

#include "config/reader/instruments.hpp"

namespace tidewright::config {

// Fills ranges and step of the instrument, and how the source's number becomes its own unit.
void read_numbers(Draft&, const Section&, const Described&, room::Instrument&, Source&);

}  // namespace tidewright::config
