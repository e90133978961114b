#include "core/water/instrument.hpp"

#include <cmath>
#include <map>
#include <string>
#include <vector>

#include "core/water/dosing_uncertainty.hpp"
#include "core/water/practical_salinity.hpp"
#include "core/water/refraction.hpp"
#include "core/water/specific_gravity.hpp"
#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

constexpr PracticalSalinity seawater{35};
constexpr Celsius room{25};

// The table's words, and the instrument's name here. The brine refractometer whose slope is
// corrected has no row: the table knows only the one that is read as it is.
const std::map<std::string, std::string> names{
    {"swing-arm plastic hydrometer, unchecked", "swing_arm"},
    {"swing-arm, one-point checked vs a standard at use temperature", "swing_arm_checked"},
    {"glass hydrometer 0.001 div, +-0.001, t corrected +-0.5 C", "hydrometer"},
    {"glass hydrometer 0.0005 div, +-0.0005, t +-0.2 C", "fine_hydrometer"},
    {"hand refractometer zeroed on pure water only, NaCl scale", "brine_refractometer_uncorrected"},
    {"hand refractometer set with a 35 seawater-matched standard", "refractometer"},
    {"digital refractometer nD +-0.0001", "index_refractometer"},
    {"conductivity probe +-1 % cell, t +-0.5 C", "probe"},
    {"conductivity probe calibrated at ~53 mS/cm, +-0.5 %, t +-0.1 C", "calibrated_probe"},
    {"laboratory salinometer vs IAPSO Standard Seawater", "salinometer"}};

double reading(const water::Instrument& instrument) {
  switch (instrument.reads) {
    case water::Instrument::Reads::conductivity:
      return water::conductivity(seawater, room)->value;
    case water::Instrument::Reads::specific_gravity:
      return *water::hydrometer_reading(seawater, room, water::GravityScale::celsius_25_25);
    case water::Instrument::Reads::refractive_index:
      return *water::refractive_index(seawater, room);
    default:
      return seawater.value;
  }
}

double standard_uncertainty_of(const Row& row) {
  const water::Instrument& one = *water::instrument_named(names.at(row.text("instrument")));
  return water::salinity_by(one, reading(one), room)->standard_uncertainty;
}

bool an_instrument(const Row& row) { return names.contains(row.text("instrument")); }

// The table's sensitivities of probes and hydrometers are the library's; of refractometers,
// somebody else's program of the formula; who reads salinity itself has none.
bool by_library(const Row& row) {
  if (!an_instrument(row)) return false;
  const auto reads = water::instrument_named(names.at(row.text("instrument")))->reads;
  return reads == water::Instrument::Reads::conductivity ||
         reads == water::Instrument::Reads::specific_gravity;
}
bool by_formula(const Row& row) { return an_instrument(row) && !by_library(row); }

std::vector<Column> both(Standing standing) {
  return {{"u_S", standing, standard_uncertainty_of},
          {"U95_S", standing,
           [](const Row& row) { return water::coverage_factor * standard_uncertainty_of(row); }}};
}

INSTANTIATE_TEST_SUITE_P(Instrument, Handbook,
                         testing::ValuesIn(checks("seawater/19_instrument_uncertainty.csv",
                                                  "salinity_by", both(Standing::library),
                                                  by_library)),
                         place);

INSTANTIATE_TEST_SUITE_P(Refractometer, Handbook,
                         testing::ValuesIn(checks("seawater/19_instrument_uncertainty.csv",
                                                  "salinity_by", both(Standing::computed),
                                                  by_formula)),
                         place);

// "gravimetric make-up (scale 0.1 %, volume 1 %, w +-3 % abs)", of a dry salt.
INSTANTIATE_TEST_SUITE_P(
    WeighedBatch, Handbook,
    testing::ValuesIn(
        checks("seawater/19_instrument_uncertainty.csv", "salinity_estimate",
               {{"u_S", Standing::computed,
                 [](const Row&) {
                   return water::salinity_estimate({100}, room, seawater, 0)->standard_uncertainty;
                 }}},
               [](const Row& row) { return row.text("instrument").starts_with("gravimetric"); })),
    place);

// The parts that the table prints for the other hand refractometers: "slope/reading +-1 ppt" 0.577,
// which the corrected scale takes in brine, 1.0406 times as many; the temperature 0.073; the
// standard 0.173.
TEST(Instrument, OfACorrectedBrineScaleIsMadeOfTheTablesParts) {
  const double reading = 0.577 / 1.0406;
  const double expected = std::hypot(reading, 0.073, 0.173);
  const water::Instrument& brine = *water::instrument_named("brine_refractometer");
  const auto sure = water::salinity_by(brine, 36.4, room);
  EXPECT_NEAR(sure->standard_uncertainty, expected, 5e-4);
  // What is left beside the standard's 0.3 / sqrt 3 is the temperature's.
  EXPECT_NEAR(std::sqrt(brine.salinity.value * brine.salinity.value - 0.3 * 0.3 / 3), 0.073, 6e-4);
}

TEST(Instrument, HasARowOfTheTable) {
  const Table table = read_table("seawater/19_instrument_uncertainty.csv");
  std::size_t found = 0;
  for (const Table::Line& line : table.lines) found += an_instrument(Row(table, line));
  EXPECT_EQ(found, names.size());
}

}  // namespace
}  // namespace tidewright::handbook
