// What a real sensor would send for a value: the door's way, backwards.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "config/household.hpp"
#include "core/room/instrument.hpp"

namespace tidewright::pretend {

// The payload with which `source` says `value` (in the instrument's own unit; 0 or 1 for wetness,
// float switch and feedback).
std::string payload(const config::Source& source, const room::Instrument& instrument, double value);

// Whether a command's payload means ON or OFF to the plug; none if neither.
std::optional<bool> command(const config::Outlet& outlet, std::string_view payload);

}  // namespace tidewright::pretend
