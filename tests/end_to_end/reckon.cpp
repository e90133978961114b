// Each `tidewright reckon` as a person types it, through the real program. The numbers are those of
// the handbook's tables, named beside them with the tolerance of tolerances.csv.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sysexits.h>

#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/support/daemon_process.hpp"
#include "tests/support/process.hpp"

namespace tidewright::support {
namespace {

using namespace std::chrono_literals;
using nlohmann::json;
using testing::HasSubstr;

struct Printed {
  int code = -1;
  std::string text;
};

// `line` is split at its blanks.
Printed reckon(const std::string& line) {
  const TemporaryDirectory directory;
  std::vector<std::string> words{program(), "reckon"};
  std::istringstream in(line);
  for (std::string word; in >> word;) words.push_back(word);
  Process process(words, directory.path() + "/out");
  const auto code = process.wait(30s);
  return {code.value_or(-1), read_file(directory.path() + "/out")};
}

struct Expected {
  const char* key;
  double value;
  double within;
};

struct Line {
  const char* typed;
  std::vector<Expected> answers;
};

class Reckon : public testing::TestWithParam<Line> {};

TEST_P(Reckon, AnswersAsTheHandbook) {
  const Printed printed = reckon(std::string(GetParam().typed) + " --json");
  ASSERT_EQ(printed.code, EX_OK) << printed.text;
  const json answer = json::parse(printed.text);
  for (const Expected& expected : GetParam().answers) {
    ASSERT_TRUE(answer.contains(expected.key)) << expected.key << " in " << printed.text;
    EXPECT_NEAR(answer[expected.key].get<double>(), expected.value, expected.within)
        << expected.key;
  }
  for (const char* key : {"formula", "source"}) {
    EXPECT_FALSE(answer.value(key, "").empty()) << key;
  }
  EXPECT_TRUE(answer["in_range"].get<bool>());
}

// seawater/: 02_pss78_grid (25 degrees, 35), 07_hydrometer_temperature and the notes of 2-3,
// 11_brine_scale_error, 05b_salinity_to_sg, 04_density_grid, 09_refractive_grid,
// 12b_seawater_wrong_compensation; the fluid: CRC Handbook, 57th edition, as cited in the notes
// of 4.
INSTANTIATE_TEST_SUITE_P(
    Seawater, Reckon,
    testing::Values(
        Line{"salinity --conductivity-ms-cm 53.0710 --temperature-c 25",
             {{"practical_salinity", 35, 1e-3}, {"absolute_salinity_g_kg", 35.16504, 1e-3}}},
        Line{"salinity --conductivity-ms-cm 53.0710 --temperature-f 77",
             {{"practical_salinity", 35, 1e-3}}},
        Line{"salinity --conductivity-at-25-ms-cm 53.2423 --temperature-c 20 --law linear",
             {{"practical_salinity", 35, 1e-3}, {"conductivity_ms_cm", 47.9180, 1e-4}}},
        Line{"salinity --conductivity-at-25-ms-cm 53.2697 --temperature-f 86 --law linear "
             "--percent-per-celsius 1.91",
             {{"practical_salinity", 35, 1e-3}, {"conductivity_ms_cm", 58.3570, 1e-4}}},
        Line{"salinity --conductivity-at-25-ms-cm 54.3921 --temperature-c 10 --law iso-7888",
             {{"practical_salinity", 35, 1e-3}, {"conductivity_ms_cm", 38.0897, 1e-4}}},
        Line{"salinity --specific-gravity 1.0264 --scale 25/25 --temperature-c 20",
             {{"practical_salinity", 33.34, 0.01}}},
        Line{"salinity --specific-gravity 1.0250 --scale 60F/60F --temperature-c 25",
             {{"practical_salinity", 35.54, 0.01}}},
        Line{"salinity --refractive-index 1.339386 --temperature-c 20",
             {{"practical_salinity", 35, 0.01}}},
        Line{"salinity --brine-scale-g-kg 35", {{"practical_salinity", 33.6, 0.1}}},
        Line{"readings --practical-salinity 35 --temperature-c 20 --scale 25/25",
             {{"conductivity_ms_cm", 47.9180, 1e-3},
              {"linear_meter_ms_cm", 53.2423, 1e-3},
              {"iso_7888_meter_ms_cm", 53.4765, 1e-3},
              {"conductivity_at_25c_ms_cm", 53.0710, 1e-3},
              {"specific_gravity_25_25", 1.026374, 2e-6},
              {"specific_gravity_20_20", 1.026607, 2e-6},
              {"specific_gravity_60f_60f", 1.026862, 2e-6},
              {"specific_gravity_17_5_17_5", 1.026744, 2e-6},
              {"specific_gravity_15_15", 1.026898, 2e-6},
              {"specific_gravity_15_4", 1.026002, 2e-6},
              {"specific_gravity_20_4", 1.024792, 2e-6},
              {"specific_gravity_25_4", 1.023369, 2e-6},
              {"hydrometer_reading", 1.02767, 1e-5},
              {"refractive_index", 1.339386, 1e-6},
              {"brine_scale_g_kg", 36.42, 0.05},
              {"density_kg_m3", 1024.766, 1e-3},
              {"absolute_salinity_g_kg", 35.16504, 1e-5},
              {"calibration_fluid_g_kg", 36.5, 0.3}}},
        Line{"gravity --practical-salinity 35 --scale 25/25",
             {{"specific_gravity", 1.02637, 1e-5}}},
        Line{"gravity --practical-salinity 35 --scale 25/4", {{"specific_gravity", 1.02337, 1e-5}}},
        Line{"density --practical-salinity 35 --temperature-c 25",
             {{"density_kg_m3", 1023.3436, 1e-3}}},
        Line{"density --practical-salinity 0 --temperature-c 25",
             {{"density_kg_m3", 997.0476, 1e-3}}}));

// seawater/: 14_salt_dosing A02, A03, B02; 14b U03, D01, X01; 15 W05, W01, W13, W10; 16 M05;
// 17 E01, E07.
INSTANTIATE_TEST_SUITE_P(
    Mixture, Reckon,
    testing::Values(
        Line{"dose --volume-l 100 --temperature-c 25 --practical-salinity 35",
             {{"salt_g", 3832.5, 0.1}, {"final_volume_l", 101.1755, 1e-3}}},
        Line{"dose --volume-l 100 --temperature-c 25 --practical-salinity 35 --water-fraction 0.1",
             {{"salt_g", 4054.1, 0.1}, {"final_volume_l", 101.3920, 1e-3}}},
        Line{"dose --finished-volume-l 100 --temperature-c 25 --practical-salinity 35",
             {{"salt_g", 3788.0, 0.1}, {"fresh_volume_l", 98.8382, 1e-3}}},
        Line{"correct --volume-l 250 --temperature-c 24 --from-practical-salinity 31.5 "
             "--to-practical-salinity 35 --water-fraction 0.08",
             {{"add_salt_g", 1014.41, 0.02}, {"final_volume_l", 250.3447, 1e-3}}},
        Line{"correct --volume-l 100 --temperature-c 25 --from-practical-salinity 37 "
             "--to-practical-salinity 35",
             {{"add_water_l", 5.8737, 1e-3}, {"final_volume_l", 105.8704, 1e-3}}},
        Line{"correct --volume-l 100 --temperature-c 25 --from-practical-salinity 37 "
             "--to-practical-salinity 35 --vat-l 100",
             {{"drain_l", 5.5449, 1e-3}, {"refill_l", 5.5480, 1e-3}}},
        Line{"change --tank-l 100 --change-l 15 --times 12 --now 10 --gain-per-change 2",
             {{"after", 11.143678, 1e-6}, {"steady", 11.333333, 1e-6}}},
        Line{"change --tank-l 400 --change-l 40 --times 1 --now 40",
             {{"after", 36, 1e-6}, {"steady", 0, 1e-6}}},
        Line{"change --tank-l 100 --change-l 15 --times 1 --now 80 --new 2 --target 10",
             {{"changes_needed", 15, 0}}},
        Line{"change --tank-l 100 --change-l 2 --days 60 --now 10 --gain-per-change 0.3",
             {{"after", 13.494029, 1e-6}, {"steady", 15, 1e-6}}},
        Line{"blend --volume-l 80 --practical-salinity 35 --temperature-c 25 --other-volume-l 20 "
             "--other-practical-salinity 0 --other-temperature-c 5",
             {{"practical_salinity", 28.12851, 1e-4},
              {"temperature_c", 20.9148, 1e-3},
              {"volume_l", 99.9381, 1e-3}}},
        Line{"evaporation --volume-l 400 --temperature-c 25 --practical-salinity 35 "
             "--evaporated-l 4",
             {{"practical_salinity", 35.34436, 1e-4}, {"volume_l", 396.0021, 1e-3}}},
        Line{"evaporation --volume-l 400 --temperature-c 25 --practical-salinity 35 "
             "--evaporated-l 20 --top-up-practical-salinity 35",
             {{"practical_salinity", 36.70289, 1e-4}}},
        Line{"evaporation --volume-l 400 --temperature-c 25 --practical-salinity 35 "
             "--now-practical-salinity 35.34436",
             {{"evaporated_l", 4, 1e-3}}}));

// purifier/: 01_two_in_series A (and its first membrane), 02_tcf; 04_resin_run and 04_twopoint;
// 05_co2_load and 05_permeate_load; 09_volumes; 11_sar; 03_ec_tds; 03_compensation; the notes of 3.
INSTANTIATE_TEST_SUITE_P(
    Purifier, Reckon,
    testing::Values(
        Line{"membrane --feed-ppm 300 --permeate-ppm 6 --permeate-l-h 10 --concentrate-l-h 30 "
             "--temperature-c 10",
             {{"rejection_percent", 98, 1e-9},
              {"recovery_percent", 25, 1e-9},
              {"concentrate_ppm", 398, 4e-3},
              {"temperature_factor", 0.5844, 1e-4},
              {"flow_at_25c_l_h", 17.11, 0.01}}},
        Line{"series --feed-ppm 300 --feed-l-h 40 --first-recovery-percent 25 "
             "--second-recovery-percent 25 --first-rejection-percent 98 "
             "--second-rejection-percent 98",
             {{"permeate_ppm", 6.840, 1e-3},
              {"concentrate_ppm", 528.01, 0.01},
              {"recovery_percent", 43.75, 1e-9},
              {"rejection_percent", 97.72, 5e-3}}},
        Line{"resin --resin-l 1.5 --permeate-us-cm 12 --carbon-dioxide-mg-l 5 --passed-l 82",
             {{"litres", 3082, 1}, {"litres_left", 3000, 1}}},
        Line{"resin --resin-l 1.5 --permeate-ppm 6 --earlier-l 3000 --earlier-reads-percent 1 "
             "--later-l 3600 --later-reads-percent 5",
             {{"litres", 6000, 2}, {"curve_half_l", 4670, 1}, {"curve_spread_l", 363.5, 0.1}}},
        Line{"solids --conductivity-at-25-us-cm 500 --factor 0.5",
             {{"solids_ppm", 250, 1e-9},
              {"solids_irrigation_ppm", 320, 1e-9},
              {"solids_natural_water_ppm", 350, 1e-9},
              {"equivalents_meq_l", 5, 1e-9},
              {"equivalents_sodium_chloride_meq_l", 3.954, 1e-3},
              {"equivalents_sodium_bicarbonate_meq_l", 5.285, 1e-3}}},
        Line{"solids --shown-ppm 350 --factor natural-water",
             {{"conductivity_at_25c_us_cm", 500, 1e-9}, {"solids_sodium_chloride_ppm", 250, 1e-9}}},
        Line{"solids --conductivity-us-cm 30.78 --temperature-c 5 --factor 0.5",
             {{"conductivity_at_25c_us_cm", 51.3, 1e-9}}},
        Line{"solids --conductivity-us-cm 0.058435 --temperature-c 10 --factor 0.5",
             {{"conductivity_at_25c_us_cm", 0.10505, 0.003}}},
        Line{"zero --factor 0.5 --display rounds",
             {{"conductivity_us_cm", 1, 1e-9},
              {"sodium_chloride_mg_l", 0.44, 0.01},
              {"resistivity_megohm_cm", 1, 1e-9}}},
        Line{"zero --factor 0.5",
             {{"conductivity_us_cm", 2, 1e-9},
              {"sodium_chloride_mg_l", 0.90, 0.01},
              {"resistivity_megohm_cm", 0.5, 1e-9}}},
        Line{"carbonate --alkalinity-mg-l 150 --ph 7.2 --temperature-c 12 --rejection-percent 97",
             {{"carbon_dioxide_mg_l", 23.2, 0.05},
              {"carbon_dioxide_meq_l", 0.526, 1e-3},
              {"permeate_ph", 5.68, 0.01}}},
        Line{"vessel --shape lying --radius-m 0.3 --length-m 1 --depth-m 0.15",
             {{"volume_l", 55.27664, 1e-4}}},
        Line{"vessel --shape cone --radius-m 0.25 --top-radius-m 0.3 --height-m 0.8 "
             "--volume-l 86.6556",
             {{"depth_m", 0.4, 1e-6}}},
        Line{"vessel --shape cylinder --radius-m 0.3 --height-m 1 --distance-m 0.7 "
             "--gauge-height-m 1.2",
             {{"volume_l", 141.3717, 1e-4}}},
        Line{"vessel --shape box --length-m 0.6 --width-m 0.5 --height-m 1 --pressure-bar "
             "0.0392266 --density-kg-m3 1000",
             {{"volume_l", 120, 1e-3}}},
        Line{"irrigation --conductivity-ms-cm 1.15 --sodium-meq-l 7.73 --calcium-meq-l 2.32 "
             "--magnesium-meq-l 1.44",
             {{"sodium_adsorption_ratio", 5.64, 5e-3}}}));

// purifier/: 02_normalisation N1 (from memory; printed 144 m3/h and 77 mg/L) and N4; 06_startup and
// 06_cycles; 07_carbon_life; by arithmetic: sediment; 04_leadlag_scipy, 04_logistic_scipy (litres
// from 20 % to 50 %, and from 5 % to 20 %); 11_langelier_published and 11_langelier (feed).
INSTANTIATE_TEST_SUITE_P(
    Upkeep, Reckon,
    testing::Values(
        Line{"normalised --first-temperature-c 15 --first-feed-pressure-bar 25 "
             "--first-pressure-drop-bar 3 --first-permeate-pressure-bar 1 --first-feed-ppm 1986 "
             "--first-permeate-ppm 83 --first-permeate-l-h 150000 --first-concentrate-l-h 50000 "
             "--temperature-c 10 --feed-pressure-bar 28 --pressure-drop-bar 4 "
             "--permeate-pressure-bar 2 --feed-ppm 2292 --permeate-ppm 80 --permeate-l-h 127000 "
             "--concentrate-l-h 49388.8889",
             {{"normalised_flow_l_h", 143646, 5}, {"normalised_permeate_ppm", 77.09, 0.01}}},
        Line{"normalised --first-temperature-c 25 --first-feed-pressure-bar 5 "
             "--first-pressure-drop-bar 0.2 --first-permeate-pressure-bar 0.1 --first-feed-ppm 300 "
             "--first-permeate-ppm 6 --first-permeate-l-h 12 --first-concentrate-l-h 36 "
             "--temperature-c 22 --feed-pressure-bar 5.2 --pressure-drop-bar 0.35 "
             "--permeate-pressure-bar 0.1 --feed-ppm 310 --permeate-ppm 6.6 --permeate-l-h 9.2 "
             "--concentrate-l-h 32.6181818",
             {{"flow_change_percent", -17.26, 0.01}, {"salt_passage_change_percent", 11.42, 0.01}}},
        Line{"startup --start-ppm 200 --permeate-ppm 8 --permeate-l-h 12 --hold-up-l 0.25 "
             "--starts-per-day 24 --per-day-l 300",
             {{"settled_minutes", 6.572, 1e-3},
              {"settled_l", 1.314, 1e-3},
              {"excess_mg", 48, 1e-6},
              {"equal_l", 6, 1e-6},
              {"mean_permeate_ppm", 11.84, 1e-6},
              {"extra_percent", 48, 1e-6}}},
        Line{"carbon --against chlorine --disinfectant-mg-l 1 --rated-gal 10000 "
             "--product-per-day-l 300 --recovery-percent 40",
             {{"feed_per_day_l", 750, 1e-9},
              {"capacity_g", 37.854, 1e-3},
              {"litres", 37854.1, 0.1},
              {"days", 50.47, 0.01},
              {"days_left", 50.47, 0.01}}},
        Line{"carbon --against chloramine --disinfectant-mg-l 3 --rated-gal 1000 --feed-per-day-l "
             "750",
             {{"days", 2.524, 1e-3}}},
        Line{"sediment --clean-drop-bar 0.1 --clean-feed-l-h 100 --drop-bar 0.282842712 --feed-l-h "
             "50 --in-use-days 65",
             {{"drop_at_clean_flow_bar", 0.8, 1e-6},
              {"used_percent", 100, 1e-6},
              {"calendar_days_left", 300, 1e-9}}},
        Line{"rotation --permeate-ppm 1000 --lead-outlet-ppm 300 --product-ppm 0",
             {{"lead_left_percent", 12.04, 0.05}, {"lag_left_percent", 96.43, 0.05}}},
        Line{"rotation --permeate-ppm 10 --lead-outlet-ppm 2 --product-ppm 0 --half-l 5000",
             {{"litres_to_rotation", 693.15, 0.01}}},
        Line{"rotation --permeate-ppm 10 --lead-outlet-ppm 8 --product-ppm 0.5 --limit-ppm 2 "
             "--half-l 5000",
             {{"litres_to_rotation", 0, 1e-9}, {"litres_to_limit", 779.07, 0.01}}},
        Line{"hardness --hardness-mg-l 150 --ph 7.5 --alkalinity-mg-l 34 --feed-ppm 320 "
             "--temperature-c 25",
             {{"langelier_index", -0.7, 0.05}, {"grains_per_gallon", 8.763, 1e-3}}},
        Line{"hardness --hardness-mg-l 200 --ph 7.4 --alkalinity-mg-l 180 --feed-ppm 400 "
             "--temperature-c 12 --recovery-percent 50",
             {{"langelier_index", -0.246, 1e-3}, {"concentrate_hardness_mg_l", 400, 1e-9}}}));

TEST(ReckonWords, SayHowSureAndWhereFrom) {
  const Printed printed = reckon("salinity --conductivity-ms-cm 53.071 --temperature-c 25");
  EXPECT_EQ(printed.code, EX_OK);
  EXPECT_THAT(printed.text, HasSubstr("practical salinity  35.00 ± 0.68\n"));
  for (const char* word : {"formula ", "source ", "how sure ", "k = 2"}) {
    EXPECT_THAT(printed.text, HasSubstr(word));
  }
}

TEST(ReckonWords, ShowCustomaryUnitsToWhoTypedThem) {
  const Printed printed =
      reckon("dose --volume-gal 26.4172 --temperature-f 77 --practical-salinity 35");
  EXPECT_EQ(printed.code, EX_OK) << printed.text;
  EXPECT_THAT(printed.text, HasSubstr("100.0 ± 1.2 L  (26.42 ± 0.31 US gal)"));
  EXPECT_THAT(printed.text, HasSubstr(" lb)"));
}

TEST(ReckonWords, StandOnTheLimitsThatWereTyped) {
  const std::string dose = "dose --volume-l 100 --temperature-c 25 --practical-salinity 35";
  const Printed usual = reckon(dose);
  EXPECT_THAT(usual.text, HasSubstr("for volume-l to 1 %; temperature-c to 0.5 °C"));
  const Printed better = reckon(dose + " --known-to volume-l=0.2");
  EXPECT_EQ(better.code, EX_OK);
  EXPECT_THAT(better.text, HasSubstr("for volume-l to 0.2 L; temperature-c to 0.5 °C"));
  const Printed refused = reckon(dose + " --known-to vat-l=1");
  EXPECT_EQ(refused.code, EX_USAGE);
  EXPECT_THAT(refused.text, HasSubstr("`vat-l=1`"));
  const Printed without = reckon(dose + " --water-fraction");
  EXPECT_EQ(without.code, EX_USAGE);
  EXPECT_THAT(without.text, HasSubstr("nothing"));
}

TEST(ReckonWords, MarkWhatIsExtrapolated) {
  const Printed words = reckon("salinity --conductivity-ms-cm 53 --temperature-c 38");
  EXPECT_EQ(words.code, EX_OK);
  EXPECT_THAT(words.text, HasSubstr("temperature 38 °C is outside -2 to 35 °C"));
  const Printed printed = reckon("salinity --conductivity-ms-cm 53 --temperature-c 38 --json");
  EXPECT_FALSE(json::parse(printed.text)["in_range"].get<bool>());
}

TEST(ReckonWords, ReadSeveralParametersAtOnce) {
  const Printed printed =
      reckon("change --tank-l 400 --change-l 40 --times 4 --parameters nitrate=40,0,0 --json");
  EXPECT_NEAR(json::parse(printed.text)["after_nitrate"].get<double>(), 26.244, 1e-6);
}

TEST(ReckonHelp, IsAsKept) {
  for (const char* quantity :
       {"salinity", "readings", "gravity",     "density",  "dose",      "correct",
        "change",   "blend",    "evaporation", "membrane", "series",    "normalised",
        "startup",  "resin",    "rotation",    "solids",   "zero",      "carbonate",
        "sediment", "carbon",   "hardness",    "vessel",   "irrigation"}) {
    const Printed printed = reckon(std::string(quantity) + " --help");
    EXPECT_EQ(printed.code, EX_OK);
    EXPECT_THAT(printed.text, HasSubstr("Example: tidewright reckon " + std::string(quantity)));
    EXPECT_EQ(printed.text,
              read_file(source_file("tests/golden/reckon/" + std::string(quantity) + ".txt")))
        << quantity;
  }
}

}  // namespace
}  // namespace tidewright::support
