// Packs of the standard itself: RFC 8428, section 5.1, and its sections on what is refused.
#include "daemon/intake/senml.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "daemon/intake/senml_unit.hpp"

namespace tidewright::intake {
namespace {

using namespace std::chrono_literals;
using room::Quantity;

const Instant now{std::chrono::seconds{1'800'000'000}};

std::vector<SenmlRecord> records(std::string_view json, std::string_view name = "") {
  auto found = senml_records(json, name);
  if (auto* refused = std::get_if<Refused>(&found)) {
    ADD_FAILURE() << words(*refused);
    return {};
  }
  return std::get<0>(std::move(found));
}

Refused refusal(std::string_view json, std::string_view name = "") {
  const auto found = senml_records(json, name);
  if (const auto* refused = std::get_if<Refused>(&found)) return *refused;
  ADD_FAILURE() << json;
  return Refused::empty;
}

// Section 5.1.1.
TEST(Senml, ASingleDataPoint) {
  const auto found = records(R"([{"n":"urn:dev:ow:10e2073a01080063","u":"Cel","v":23.1}])",
                             "urn:dev:ow:10e2073a01080063");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].value.number, 23.1);
  EXPECT_EQ(found[0].unit, "Cel");
  EXPECT_EQ(found[0].seconds, 0);
  EXPECT_FALSE(found[0].absolute);
}

// Section 5.1.2; the resolved form of its second pack is given in section 5.1.4.
constexpr std::string_view voltage_and_current = R"([
  {"bn":"urn:dev:ow:10e2073a01080063:","n":"voltage","u":"V","v":120.1},
  {"n":"current","u":"A","v":1.2}])";
constexpr std::string_view current_by_time = R"([
  {"bn":"urn:dev:ow:10e2073a0108006:","bt":1.276020076001e+09,"bu":"A","bver":5,
   "n":"voltage","u":"V","v":120.1},
  {"n":"current","t":-5,"v":1.2},
  {"n":"current","t":-4,"v":1.3},
  {"n":"current","t":-3,"v":1.4},
  {"n":"current","t":-2,"v":1.5},
  {"n":"current","t":-1,"v":1.6},
  {"n":"current","v":1.7}])";

TEST(Senml, MultipleDataPointsHaveTheBaseNameBeforeTheirs) {
  const auto current = records(voltage_and_current, "urn:dev:ow:10e2073a01080063:current");
  ASSERT_EQ(current.size(), 1u);
  EXPECT_EQ(current[0].value.number, 1.2);
  EXPECT_EQ(current[0].unit, "A");
  EXPECT_EQ(refusal(voltage_and_current, "current"), Refused::nothing_there);
  EXPECT_EQ(refusal(voltage_and_current), Refused::several_names);
}

TEST(Senml, BaseTimeAndBaseUnitAreWorkedIn) {
  const auto current = records(current_by_time, "urn:dev:ow:10e2073a0108006:current");
  ASSERT_EQ(current.size(), 6u);
  for (std::size_t i = 0; i < current.size(); ++i) {
    EXPECT_EQ(current[i].unit, "A");
    EXPECT_TRUE(current[i].absolute);
    EXPECT_NEAR(current[i].seconds, 1.276020071001e+09 + static_cast<double>(i), 1e-3);
    EXPECT_NEAR(current[i].value.number, 1.2 + 0.1 * static_cast<double>(i), 1e-9);
  }
  const auto voltage = records(current_by_time, "urn:dev:ow:10e2073a0108006:voltage");
  ASSERT_EQ(voltage.size(), 1u);
  EXPECT_EQ(voltage[0].unit, "V") << "its own unit goes before the base unit";
  EXPECT_NEAR(voltage[0].seconds, 1.276020076001e+09, 1e-3);
}

// Section 5.1.3: one name for several units; each record has its own.
TEST(Senml, RecordsOfOneNameKeepTheirUnits) {
  const auto found = records(R"([
    {"bn":"urn:dev:ow:10e2073a01080063","bt":1.320067464e+09,"bu":"%RH","v":20},
    {"u":"lon","v":24.30621},
    {"u":"lat","v":60.07965},
    {"t":60,"v":20.3}])");
  ASSERT_EQ(found.size(), 4u);
  EXPECT_EQ(found[0].unit, "%RH");
  EXPECT_EQ(found[1].unit, "lon");
  EXPECT_EQ(found[3].unit, "%RH");
  EXPECT_NEAR(found[3].seconds, 1.320067524e+09, 1e-3);
}

// Section 5.1.5.
TEST(Senml, ValuesAreNumbersTextsAndBooleans) {
  constexpr std::string_view pack = R"([
    {"bn":"urn:dev:ow:10e2073a01080063:","n":"temp","u":"Cel","v":23.1},
    {"n":"label","vs":"Machine Room"},
    {"n":"open","vb":false},
    {"n":"nfc-reader","vd":"aGkgCg"}])";
  const std::string base = "urn:dev:ow:10e2073a01080063:";
  EXPECT_EQ(records(pack, base + "temp")[0].value.number, 23.1);
  EXPECT_EQ(records(pack, base + "label")[0].value.text, "Machine Room");
  EXPECT_EQ(records(pack, base + "open")[0].value.kind, Leaf::Kind::boolean);
  EXPECT_EQ(refusal(pack, base + "nfc-reader"), Refused::nothing_there);
}

// Section 4.1: a base value is added to each value.
TEST(Senml, ABaseValueIsAdded) {
  EXPECT_EQ(records(R"([{"bn":"a","bv":20,"v":3}])")[0].value.number, 23);
}

// Sections 4.1 to 4.5.
TEST(Senml, RefusesWhatIsNoPack) {
  EXPECT_EQ(refusal("{}"), Refused::not_senml);
  EXPECT_EQ(refusal("[1]"), Refused::not_senml);
  EXPECT_EQ(refusal("[]"), Refused::nothing_there);
  EXPECT_EQ(refusal("23.1"), Refused::not_senml);
  EXPECT_EQ(refusal("[[{}]]"), Refused::not_senml);
  EXPECT_EQ(refusal(R"([{"n":"a","v":1)"), Refused::not_json);
  EXPECT_EQ(refusal(R"([{"n":"a","v":"1"}])"), Refused::not_senml);
  EXPECT_EQ(refusal(R"([{"n":"a","v":null}])"), Refused::null);
  EXPECT_EQ(refusal(R"([{"n":"a","v":1,"vb":true}])"), Refused::not_senml) << "two values";
  EXPECT_EQ(refusal(R"([{"n":"a","n":"b","v":1}])"), Refused::duplicate_key);
  EXPECT_EQ(refusal(R"([{"v":1}])"), Refused::not_senml) << "no name";
  EXPECT_EQ(refusal(R"([{"n":"-a","v":1}])"), Refused::not_senml) << "no letter or digit first";
  EXPECT_EQ(refusal(R"([{"n":"a b","v":1}])"), Refused::not_senml);
  EXPECT_EQ(refusal(R"([{"n":"a","bver":11,"v":1}])"), Refused::senml_version);
  EXPECT_EQ(refusal(R"([{"n":"a","new_":1,"v":1}])"), Refused::must_be_understood);
}

// Section 4.4: a label that is not known is passed over.
TEST(Senml, PassesOverWhatItDoesNotKnow) {
  EXPECT_EQ(records(R"([{"n":"a","new":{"v":[{"n":7}]},"ut":60,"v":1}])")[0].value.number, 1);
}

struct Conversion {
  const char* unit;
  Quantity quantity;
  double shown;
  double meant;
};

// By the definition of the units; a vat of 200 L.
TEST(Senml, UnitsOfTheRegistryAreConvertedOnce) {
  for (const auto& [unit, quantity, shown, meant] :
       {Conversion{"Cel", Quantity::temperature, 21.5, 21.5},
        {"K", Quantity::temperature, 293.15, 20},
        {"W", Quantity::power, 60, 60},
        {"kW", Quantity::power, 0.06, 60},
        {"Pa", Quantity::pressure, 300'000, 3},
        {"hPa", Quantity::pressure, 3000, 3},
        {"m3/s", Quantity::flow, 1e-5, 36},
        {"l/s", Quantity::flow, 0.01, 36},
        {"m3", Quantity::water_count, 1.5, 1500},
        {"l", Quantity::level, 90, 90},
        {"/", Quantity::level, 0.45, 90},
        {"%", Quantity::level, 45, 90},
        {"/100", Quantity::level, 45, 90},
        {"/", Quantity::dissolved_solids, 3e-6, 3},
        {"kg/m3", Quantity::dissolved_solids, 0.3, 300},
        {"ppm", Quantity::dissolved_solids, 3, 3}}) {
    const auto found = senml_unit(unit, quantity, 200);
    ASSERT_TRUE(found) << unit;
    EXPECT_NEAR(shown * found->factor + found->offset, meant, 1e-9 * std::abs(meant)) << unit;
  }
}

TEST(Senml, AUnitOfAnotherThingIsNone) {
  EXPECT_FALSE(senml_unit("Cel", Quantity::power, 1));
  EXPECT_FALSE(senml_unit("S/m", Quantity::dissolved_solids, 1)) << "a conductivity is not ppm";
  EXPECT_FALSE(senml_unit("%RH", Quantity::level, 200));
  EXPECT_FALSE(senml_unit("C", Quantity::temperature, 1)) << "that is the coulomb";
}

class SenmlAtTheDoor : public testing::Test {
 protected:
  SenmlAtTheDoor() {
    source.form = config::Form::senml;
    instrument.quantity = Quantity::temperature;
  }
  std::variant<Reading, Refused> decoded(std::string_view pack, bool unknown_age = false) const {
    return decode(source, instrument, 2, {pack, unknown_age}, {}, now);
  }
  Reading reading(std::string_view pack, bool unknown_age = false) const {
    const auto found = decoded(pack, unknown_age);
    if (const auto* refused = std::get_if<Refused>(&found)) ADD_FAILURE() << words(*refused);
    const auto* read = std::get_if<Reading>(&found);
    return read != nullptr ? *read : Reading{};
  }
  config::Source source;
  room::Instrument instrument;
};

TEST_F(SenmlAtTheDoor, TheLatestRecordIsTheReading) {
  const Reading latest = reading(R"([
    {"bn":"t","bu":"Cel","t":-10,"v":20},{"v":22},{"t":-60,"v":19}])");
  EXPECT_EQ(latest.value, 22);
  EXPECT_EQ(latest.arrival, Arrival::live);
  EXPECT_EQ(latest.taken, long_ago) << "now, as far as the pack says";
}

TEST_F(SenmlAtTheDoor, ItsTimeIsTheSourcesOwn) {
  EXPECT_EQ(reading(R"([{"n":"t","t":-5,"v":20}])").taken, now - 5s);
  EXPECT_EQ(reading(R"([{"n":"t","t":1799999990,"v":20}])").taken, now - 10s);
  const Reading kept = reading(R"([{"n":"t","t":1799999990,"v":20}])", true);
  EXPECT_EQ(kept.arrival, Arrival::dated);
  EXPECT_EQ(reading(R"([{"n":"t","t":-5,"v":20}])", true).arrival, Arrival::retained)
      << "five seconds before what?";
}

TEST_F(SenmlAtTheDoor, AUnitOfAnotherThingIsRefusedAndNoUnitIsTheFiles) {
  EXPECT_EQ(std::get<Refused>(decoded(R"([{"n":"t","u":"W","v":20}])")), Refused::wrong_unit);
  source.scale = 5.0 / 9;
  source.offset = -160.0 / 9;
  EXPECT_NEAR(reading(R"([{"n":"t","v":68}])").value, 20, 1e-9);  // °F, as the file has it
  EXPECT_NEAR(reading(R"([{"n":"t","u":"Cel","v":20}])").value, 20, 1e-9);
}

TEST_F(SenmlAtTheDoor, ALeakSensorSpeaksInBooleansOrWords) {
  instrument.quantity = Quantity::wetness;
  source.on_words = {"wet"};
  source.off_words = {"dry"};
  EXPECT_EQ(reading(R"([{"n":"t","vb":true}])").value, 1);
  EXPECT_EQ(reading(R"([{"n":"t","vb":false}])").value, 0);
  EXPECT_EQ(reading(R"([{"n":"t","vs":"wet"}])").value, 1);
  EXPECT_EQ(std::get<Refused>(decoded(R"([{"n":"t","vs":"moist"}])")), Refused::unknown_word);
  // Danger counts whenever it comes.
  EXPECT_EQ(reading(R"([{"bn":"t","t":-60,"vb":true},{"vb":false}])").value, 1);
  instrument.quantity = Quantity::feedback;
  EXPECT_EQ(reading(R"([{"bn":"t","t":-60,"vb":true},{"vb":false}])").value, 0);
}

TEST_F(SenmlAtTheDoor, TimesBeyondReasonAreNone) {
  EXPECT_EQ(reading(R"([{"n":"t","t":1e300,"v":20}])").taken, long_ago);
  EXPECT_EQ(reading(R"([{"n":"t","t":-1e300,"v":20}])").taken, long_ago);
  EXPECT_EQ(reading(R"([{"n":"t","t":-1e10,"v":20}])").taken, long_ago);
}

}  // namespace
}  // namespace tidewright::intake
