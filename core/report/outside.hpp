// Why a formula of core/water refused a number, or was carried beyond what it was made for. Called
// by `reckon`.
#pragma once

#include <string>

#include "core/water/answer.hpp"

namespace tidewright::report {

// "temperature 61 °C is outside -2 to 35 °C"
std::string words(const water::Outside& outside);

}  // namespace tidewright::report
