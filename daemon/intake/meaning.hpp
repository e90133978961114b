// What is shown, in the instrument's own unit: words, numbers, calibration, units.
// Called by daemon/intake only.
#pragma once

#include <variant>

#include "daemon/intake/json_leaf.hpp"
#include "daemon/intake/senml.hpp"

namespace tidewright::intake {

// 0 or 1 for those that speak in words.
std::variant<double, Refused> meaning(const config::Source&, const room::Instrument&, const Leaf&);

// A record's own unit goes before the file's; `points` mean what is shown, in whatever unit.
std::variant<double, Refused> meaning(const config::Source&, const room::Instrument&,
                                      const SenmlRecord&);

}  // namespace tidewright::intake
