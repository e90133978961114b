#include "core/water/blend.hpp"

#include <functional>

#include "core/water/reference_salt.hpp"
#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

water::Body one(const Row& row) { return {{row["V1_L"]}, {row["S1"]}, {row["t1_C"]}}; }
water::Body other(const Row& row) { return {{row["V2_L"]}, {row["S2"]}, {row["t2_C"]}}; }

Column column(const std::string& name, const std::function<double(const water::Body&)>& of) {
  return {name, Standing::library,
          [of](const Row& row) { return of(*water::blend(one(row), other(row))); }};
}

INSTANTIATE_TEST_SUITE_P(
    Blend, Handbook,
    testing::ValuesIn(checks(
        "seawater/16_blend.csv", "blend",
        {column("S_P_mix", [](const auto& body) { return body.salinity.value; }),
         column("SA_mix",
                [](const auto& body) { return water::absolute_salinity(body.salinity).value; }),
         column("t_mix_C", [](const auto& body) { return body.temperature.value; }),
         column("V_mix_L", [](const auto& body) { return body.volume.value; })})),
    place);

INSTANTIATE_TEST_SUITE_P(
    BlendMass, Handbook,
    testing::ValuesIn(checks("seawater/16_blend.csv", "mass",
                             {{"m1_kg", Standing::library,
                               [](const Row& row) { return or_nan(water::mass(one(row))); }},
                              {"m2_kg", Standing::library,
                               [](const Row& row) { return or_nan(water::mass(other(row))); }}})),
    place);

}  // namespace
}  // namespace tidewright::handbook
