// When a fill has reached its end.
#pragma once

#include <optional>

#include "core/base/reason.hpp"
#include "core/picture/picture.hpp"

namespace tidewright::procedure {

// What says that the vat is full: the level at STOP, the float switch, or a pump that draws no
// power near STOP because the float valve has closed. None while nothing does. The level must be
// good; that a doubtful one holds the pump off is the interlock's business (vat_at_stop).
std::optional<Reason> full(const picture::Picture&);

}  // namespace tidewright::procedure
