// Inside of read_value only: its cases, one for each way of writing.
#pragma once

#include <string>
#include <string_view>

#include "config/reader/value.hpp"

namespace tidewright::config {

// Says what was found, and what was expected in its place.
void refuse(const Key&, Spot, std::string_view found, std::string hint, Problems&);
// Whether a value in base units is within the row's limits; a problem if not.
bool within_limits(const Key&, const Node&, double value, Problems&);

// Each fills the value and returns true, or adds a problem and returns false.
bool read_text(const Key&, const Node&, Value&, Problems&);
bool read_quantity_value(const Key&, const Node&, Value&, Problems&);

}  // namespace tidewright::config
