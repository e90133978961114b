#include "daemon/intake/senml_unit.hpp"

#include <algorithm>
#include <iterator>

namespace tidewright::intake {
namespace {

struct UnitRow {
  std::string_view name;
  room::Quantity quantity;
  SenmlUnit meaning;
  bool of_whole = false;  // a share of the vat
};

// RFC 8428, section 12.1; from "kW" on RFC 8798, section 3 (both from memory). 1 kg/m3 of dissolved
// solids is 1000 mg/L; a pressure is taken as above the air, which neither registry says.
constexpr UnitRow unit_rows[] = {
    {"Cel", room::Quantity::temperature, {}},
    {"K", room::Quantity::temperature, {1, -273.15}},
    {"W", room::Quantity::power, {}},
    {"Pa", room::Quantity::pressure, {1e-5, 0}},
    {"m3/s", room::Quantity::flow, {3.6e6, 0}},
    {"l/s", room::Quantity::flow, {3600, 0}},
    {"m3", room::Quantity::water_count, {1000, 0}},
    {"l", room::Quantity::water_count, {}},
    {"m3", room::Quantity::level, {1000, 0}},
    {"l", room::Quantity::level, {}},
    {"/", room::Quantity::level, {}, true},
    {"%", room::Quantity::level, {0.01, 0}, true},
    {"/", room::Quantity::dissolved_solids, {1e6, 0}},
    {"kg/m3", room::Quantity::dissolved_solids, {1000, 0}},
    {"kW", room::Quantity::power, {1000, 0}},
    {"hPa", room::Quantity::pressure, {1e-3, 0}},
    {"ppm", room::Quantity::dissolved_solids, {}},
    {"/100", room::Quantity::level, {0.01, 0}, true},
};

}  // namespace

std::optional<SenmlUnit> senml_unit(std::string_view unit, room::Quantity quantity, double whole) {
  const auto* const row =
      std::find_if(std::begin(unit_rows), std::end(unit_rows), [&](const UnitRow& candidate) {
        return candidate.name == unit && candidate.quantity == quantity;
      });
  if (row == std::end(unit_rows)) return std::nullopt;
  SenmlUnit meaning = row->meaning;
  if (row->of_whole) meaning.factor *= whole;
  return meaning;
}

}  // namespace tidewright::intake
