// What several quantities say alike.
#pragma once

#include <string>
#include <string_view>

#include "core/water/dosing.hpp"
#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/quantity.hpp"

namespace tidewright::commands::reckon {

// Options that several quantities ask for, each with the range that its formulas answer in.
inline constexpr Option water_temperature{
    "temperature", Unit::celsius, "temperature of the water", -5, 60, true, by_thermometer};
inline constexpr Option tank_temperature{
    "temperature", Unit::celsius, "temperature of the water", 0, 40, true, by_thermometer};
inline constexpr Option water_fraction{"water-fraction",
                                       Unit::none,
                                       "of the salt as sold; 0.05 if left out",
                                       0,
                                       0.5,
                                       false,
                                       {0, 0.03},
                                       water::common_water_fraction};
inline constexpr std::string_view density_source =
    "TEOS-10: IOC, SCOR & IAPSO 2010, Manuals and Guides 56";
inline constexpr std::string_view mass_balance_source =
    "balance of mass and salt; densities of TEOS-10 (IOC, SCOR & IAPSO 2010, Manuals and Guides "
    "56)";
inline constexpr std::string_view membrane_source =
    "FilmTec Reverse Osmosis Membranes Technical Manual, DuPont, form 45-D01504-en rev. 20";

// A list of cautions that call the water "it": the first says which water.
template <class List>
void warn_of(std::string_view water, const List& cautions, Reckoned& reckoned) {
  for (const std::string_view caution : cautions) {
    const bool of_it = caution.starts_with("It ");
    reckoned.cautions.push_back(of_it ? std::string(water) + std::string(caution.substr(2))
                                      : std::string(caution));
  }
}

inline constexpr std::string_view not_for_drinking =
    "Mixed seawater is not for drinking. Salt dust and brine hurt eyes: wear glasses.";
inline constexpr std::string_view mains_and_water =
    "Water and mains do not mix: pull the pumps' and heaters' plugs before you reach in.";

inline constexpr std::string_view pressure_in_housings =
    "Shut the feed and let the pressure out before you open a housing; a bucket stands below it.";

}  // namespace tidewright::commands::reckon
