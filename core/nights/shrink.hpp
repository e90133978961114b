// The shortest night that still shows a violation.
#pragma once

#include "core/nights/night.hpp"

namespace tidewright::nights {

// Leaves out faults, habits and time while the invariant of that name is still violated.
Night shrink(const room::Room& household, const Night&, std::string_view invariant);

}  // namespace tidewright::nights
