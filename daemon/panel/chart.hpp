// A curve as a drawing with its axes, marks and words: SVG that stands without script. Pure.
#pragma once

#include <string>
#include <string_view>

#include "core/base/instant.hpp"
#include "daemon/panel/curve.hpp"
#include "daemon/panel/style.hpp"

namespace tidewright::panel {

// A figure with its caption and the list of its marks; `unit` as core has it.
std::string chart(const Curve& curve, std::string_view unit, const WallClock& wall,
                  const Style& style);

}  // namespace tidewright::panel
