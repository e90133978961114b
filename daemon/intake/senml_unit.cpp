#include "daemon/intake/senml_unit.hpp"

#include <algorithm>
#include <iterator>

namespace tidewright::intake {
namespace {

struct UnitRow {
  std::string_view name;
  SenmlUnit meaning;
  room::Quantity quantity;
  bool of_whole = false;  // a share of the vat
};

// RFC 8428, section 12.1; from "kW" on RFC 8798, section 3 (both from memory). 1 kg/m3 of dissolved
// solids is 1000 mg/L; a pressure is taken as above the air, which neither registry says.
constexpr UnitRow unit_rows[] = {
    {"Cel", {}, room::Quantity::temperature},
    {"K", {1, -273.15}, room::Quantity::temperature},
    {"W", {}, room::Quantity::power},
    {"Pa", {1e-5, 0}, room::Quantity::pressure},
    {"m3/s", {3.6e6, 0}, room::Quantity::flow},
    {"l/s", {3600, 0}, room::Quantity::flow},
    {"m3", {1000, 0}, room::Quantity::water_count},
    {"l", {}, room::Quantity::water_count},
    {"m3", {1000, 0}, room::Quantity::level},
    {"l", {}, room::Quantity::level},
    {"/", {}, room::Quantity::level, true},
    {"%", {0.01, 0}, room::Quantity::level, true},
    {"/", {1e6, 0}, room::Quantity::dissolved_solids},
    {"kg/m3", {1000, 0}, room::Quantity::dissolved_solids},
    {"kW", {1000, 0}, room::Quantity::power},
    {"hPa", {1e-3, 0}, room::Quantity::pressure},
    {"ppm", {}, room::Quantity::dissolved_solids},
    {"/100", {0.01, 0}, room::Quantity::level, true},
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
