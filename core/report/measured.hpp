// A measured value as it is published: itself or null with its why, and the NE 107 status beside
// it.
#pragma once

#include <optional>
#include <string>

#include "core/picture/picture.hpp"
#include "core/report/fields.hpp"

namespace tidewright::report {

// `name` and `name_status`; where there is no instrument, the status is null too. A value that is
// not good is null, and `name_why` says why.
void add_measured(const picture::Picture&, const std::string& name,
                  std::optional<room::InstrumentIndex>, std::optional<double> value, Fields&);

// What it says, if that is good.
std::optional<double> good_value(const picture::Picture&, std::optional<room::InstrumentIndex>);

}  // namespace tidewright::report
