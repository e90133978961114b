#include "core/water/membrane.hpp"

#include "core/water/membrane_series.hpp"
#include "core/water/membrane_temperature.hpp"
#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

double recovery(const Row& row) {
  return or_nan(water::recovery({row["permeate_flow"]}, {row["concentrate_flow"]}));
}

double rejection(const Row& row) {
  return or_nan(water::rejection(MilligramsPerLitre{row["feed_tds_mgL"]},
                                 MilligramsPerLitre{row["permeate_tds_mgL"]}));
}

double salt_passage(const Row& row) {
  return or_nan(water::salt_passage(PartsPerMillion{row["feed_tds_mgL"]},
                                    PartsPerMillion{row["permeate_tds_mgL"]}));
}

double mean_factor(const Row& row) {
  return or_nan(water::mean_concentration_factor(recovery(row)));
}

double factor(const Row& row) {
  return or_nan(water::concentration_factor(recovery(row), rejection(row)));
}

double ideal_factor(const Row& row) {
  return or_nan(water::concentration_factor(recovery(row), 1));
}

// Of the first table only the first row's recovery and rejection are printed; the rest of that row
// is arithmetic.
const std::string basics = "purifier/01_membrane_basics.csv";

double percent_recovery(const Row& row) { return 100 * recovery(row); }
double percent_rejection(const Row& row) { return 100 * rejection(row); }
double percent_passage(const Row& row) { return 100 * salt_passage(row); }
double concentrate(const Row& row) { return factor(row) * row["feed_tds_mgL"]; }
double mean_feed(const Row& row) { return mean_factor(row) * row["feed_tds_mgL"]; }

INSTANTIATE_TEST_SUITE_P(Recovery, Handbook,
                         testing::ValuesIn(checks(basics, "recovery",
                                                  {{"recovery_pct", {}, percent_recovery}})),
                         place);

INSTANTIATE_TEST_SUITE_P(Rejection, Handbook,
                         testing::ValuesIn(checks(basics, "rejection",
                                                  {{"rejection_pct", {}, percent_rejection}})),
                         place);

INSTANTIATE_TEST_SUITE_P(SaltPassage, Handbook,
                         testing::ValuesIn(checks(basics, "salt_passage",
                                                  {{"salt_passage_pct", Standing::computed,
                                                    percent_passage}})),
                         place);

INSTANTIATE_TEST_SUITE_P(
    ConcentrationFactor, Handbook,
    testing::ValuesIn(checks(basics, "concentration_factor",
                             {{"conc_factor_exact", Standing::computed, factor},
                              {"conc_factor_ideal", Standing::computed, ideal_factor},
                              {"concentrate_tds_mgL", Standing::computed, concentrate}})),
    place);

INSTANTIATE_TEST_SUITE_P(
    MeanConcentrationFactor, Handbook,
    testing::ValuesIn(checks(basics, "mean_concentration_factor",
                             {{"logmean_factor", Standing::computed, mean_factor},
                              {"avg_feed_conc_tds_mgL", Standing::computed, mean_feed}})),
    place);

const std::string printed = "purifier/01_membrane_published.csv";

double printed_concentrate(const Row& row) {
  return row["feed_tds_mgL"] *
         or_nan(water::concentration_factor(row["recovery"], row["rejection"]));
}

INSTANTIATE_TEST_SUITE_P(RecoveryPublished, Handbook,
                         testing::ValuesIn(checks(printed, "recovery",
                                                  {{"recovery", Standing::published, recovery}})),
                         place);

INSTANTIATE_TEST_SUITE_P(RejectionPublished, Handbook,
                         testing::ValuesIn(checks(printed, "rejection",
                                                  {{"rejection", Standing::published, rejection}})),
                         place);

INSTANTIATE_TEST_SUITE_P(ConcentrationFactorPublished, Handbook,
                         testing::ValuesIn(checks(printed, "concentration_factor",
                                                  {{"concentrate_tds_mgL", Standing::published,
                                                    printed_concentrate}})),
                         place);

water::Answer<water::AlongMembrane> along(const Row& row) {
  return water::along_membrane(row["local_rejection"], row["recovery"]);
}

INSTANTIATE_TEST_SUITE_P(
    AlongMembrane, Handbook,
    testing::ValuesIn(checks(
        "purifier/01_local_rejection.csv", "along_membrane",
        {{"Cc_over_Cf", {}, [](const Row& row) { return along(row)->concentrate_over_feed; }},
         {"Cp_over_Cf", {}, [](const Row& row) { return along(row)->permeate_over_feed; }},
         {"apparent_rejection",
          {},
          [](const Row& row) { return along(row)->apparent_rejection; }}})),
    place);

const std::string integrated = "purifier/01_local_rejection_scipy.csv";

INSTANTIATE_TEST_SUITE_P(
    AlongMembraneByScipy, Handbook,
    testing::ValuesIn(checks(integrated, "along_membrane",
                             {{"Cc_over_Cf", Standing::library,
                               [](const Row& row) { return along(row)->concentrate_over_feed; }},
                              {"Cp_over_Cf", Standing::library,
                               [](const Row& row) { return along(row)->permeate_over_feed; }},
                              {"apparent_rejection", Standing::library,
                               [](const Row& row) { return along(row)->apparent_rejection; }}})),
    place);

INSTANTIATE_TEST_SUITE_P(
    MeanConcentrationFactorByScipy, Handbook,
    testing::ValuesIn(checks(integrated, "mean_concentration_factor",
                             {{"mean_factor", Standing::library,
                               [](const Row& row) {
                                 return or_nan(water::mean_concentration_factor(row["recovery"]));
                               }}})),
    place);

water::MembraneSeries series(const Row& row) {
  return *water::membranes_in_series({row["feed_tds"]}, {row["feed_flow_Lh"]},
                                     {row["Y1"], row["R1"]}, {row["Y2"], row["R2"]});
}

using Series = water::MembraneSeries;

template <auto Member>
Column series_column(const std::string& name, double scale = 1) {
  return {name, {}, [scale](const Row& row) {
            const auto value = series(row).*Member;
            if constexpr (std::is_same_v<decltype(value), const double>) {
              return scale * value;
            } else {
              return scale * value.value;
            }
          }};
}

INSTANTIATE_TEST_SUITE_P(
    MembranesInSeries, Handbook,
    testing::ValuesIn(
        checks("purifier/01_two_in_series.csv", "membranes_in_series",
               {series_column<&Series::permeate_first>("perm1_tds"),
                series_column<&Series::feed_second>("conc1_tds(=feed2)"),
                series_column<&Series::permeate_second>("perm2_tds"),
                series_column<&Series::concentrate>("conc_out_tds"),
                series_column<&Series::permeate_first_flow>("Qp1_Lh"),
                series_column<&Series::permeate_second_flow>("Qp2_Lh"),
                series_column<&Series::concentrate_flow>("Qc_out_Lh"),
                series_column<&Series::recovery>("overall_recovery_pct", 100),
                series_column<&Series::permeate>("blended_perm_tds"),
                series_column<&Series::rejection>("system_rejection_pct", 100),
                series_column<&Series::concentrate_per_permeate>("waste_to_product")})),
    place);

double temperature_factor(const Row& row, const water::MembraneTemperatureLaw& law = {}) {
  return or_nan(water::temperature_factor(Celsius{row["T_C"]}, law));
}

double divisor(const Row& row) { return 1 / temperature_factor(row); }

// The chart's last two rows are a product sheet's rounded "59 F" and "50 F".
INSTANTIATE_TEST_SUITE_P(
    TemperatureFactorPublished, Handbook,
    testing::ValuesIn(checks("purifier/02_tcf_published.csv", "temperature_factor",
                             {{"published_divisor", {}, divisor}},
                             [](const Row& row) { return row.number() <= 40; })),
    place);

INSTANTIATE_TEST_SUITE_P(
    TemperatureFactorOfTheSite, Handbook,
    testing::ValuesIn(checks("purifier/02_rating_to_site.csv", "temperature_factor",
                             {{"TCF_site", Standing::computed,
                               [](const Row& row) {
                                 return or_nan(water::temperature_factor({row["site_T"]}));
                               }}})),
    place);

double factor_of_2700(const Row& row) { return temperature_factor(row, {2700, 2700, 273}); }

bool is_2700(const Row& row) { return row.text("form").starts_with("multiplier (K=2700"); }

INSTANTIATE_TEST_SUITE_P(TemperatureFactorOfAnotherMaker, Handbook,
                         testing::ValuesIn(checks("purifier/02_tcf_other_tables.csv",
                                                  "temperature_factor",
                                                  {{"published", {}, factor_of_2700}}, is_2700)),
                         place);

double factor_or_divisor(const Row& row) {
  return row.text("form") == "divisor" ? divisor(row) : temperature_factor(row);
}

INSTANTIATE_TEST_SUITE_P(
    TemperatureFactorBesideOtherTables, Handbook,
    testing::ValuesIn(checks("purifier/02_tcf_other_tables.csv", "temperature_factor",
                             {{"dupont_form_value", Standing::computed, factor_or_divisor}})),
    place);

INSTANTIATE_TEST_SUITE_P(
    TemperatureFactorComputed, Handbook,
    testing::ValuesIn(checks("purifier/02_tcf.csv", "temperature_factor",
                             {{"TCF_flow_multiplier(3020<25<=2640, 273/298)",
                               {},
                               [](const Row& row) { return temperature_factor(row); }},
                              {"divide_by_form(1/TCF)", {}, divisor},
                              {"TCF_with_273.15/298.15",
                               {},
                               [](const Row& row) {
                                 return temperature_factor(row, {2640, 3020, 273.15});
                               }},
                              {"TCF_2640_all_temps",
                               {},
                               [](const Row& row) {
                                 return temperature_factor(row, {2640, 2640, 273.15});
                               }},
                              {"TCF_2700", {}, factor_of_2700}})),
    place);

INSTANTIATE_TEST_SUITE_P(
    TemperatureFactorByTheRule, Handbook,
    testing::ValuesIn(checks("purifier/02_tcf.csv", "temperature_factor",
                             {{"rule_3pct_per_C", Standing::remembered,
                               [](const Row& row) { return temperature_factor(row); }}},
                             [](const Row& row) { return row["T_C"] >= 15 && row["T_C"] <= 35; })),
    place);

}  // namespace
}  // namespace tidewright::handbook
