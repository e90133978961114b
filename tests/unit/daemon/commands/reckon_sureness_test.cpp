// How sure an answer is: by hand, and against many draws of the inputs.
#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <random>
#include <sstream>

#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/sureness.hpp"
#include "daemon/commands/reckon/typed_numbers.hpp"

namespace tidewright::commands::reckon {
namespace {

using testing::HasSubstr;

// "--tank-l 400 --now 40" as it is typed; a text with blanks in it cannot be.
TypedOptions typed(const std::string& line) {
  TypedOptions options;
  std::istringstream in(line);
  for (std::string word, value; in >> word;) {
    if (!word.starts_with("--")) continue;
    in >> value;
    options[word] = value;
  }
  return options;
}

struct Sure {
  Inputs inputs;
  Reckoned reckoned;

  double uncertainty(const std::string& key) const {
    for (const Result& result : reckoned.results) {
      if (result.key == key) return result.uncertainty.value_or(0);
    }
    ADD_FAILURE() << "no " << key;
    return 0;
  }
};

Sure sure(const Quantity& quantity, const std::string& line, const std::string& limits = "") {
  Sure answer{std::get<Inputs>(read_inputs(quantity, typed(line))), {}};
  EXPECT_FALSE(read_limits(quantity, limits, answer.inputs));
  answer.reckoned = std::get<Reckoned>(quantity.reckon(answer.inputs));
  add_sureness(quantity, answer.inputs, answer.reckoned);
  return answer;
}

const std::string box = "--shape box --length-m 1 --width-m 0.5 --height-m 0.4 --depth-m 0.4";

// JCGM 100:2008 section 5.1.6: of a product, relative uncertainties add up as squares. A tape is
// known to 2 mm; 4.3.7: over the root of three.
TEST(Sureness, OfAProductIsThatOfTheGuide) {
  const double u = 0.002 / std::sqrt(3.0);
  const double relative = std::sqrt(u * u * (1 / 1.0 + 1 / 0.25 + 1 / 0.16));
  const Sure answer = sure(vessel, box + " --depth-m 0.2");
  EXPECT_NEAR(answer.uncertainty("full_l"), 2 * 200 * relative, 1e-4 * 200 * relative);
}

TEST(Sureness, StandsOnWhatThePersonKnowsBetter) {
  const double u = 0.0005 / std::sqrt(3.0);
  const Sure answer = sure(vessel, box, "length-m=0 width-m=0 height-m=0 depth-m=0.0005");
  EXPECT_NEAR(answer.uncertainty("volume_l"), 2 * 500 * u, 1e-9);
  EXPECT_EQ(answer.uncertainty("full_l"), 0);
  EXPECT_THAT(answer.reckoned.sureness, HasSubstr("depth-m to 0.0005 m"));
}

// 1 US gallon is 3.785411784 L (NIST Handbook 44, appendix C); 1.8 °F of a difference are 1 °C.
TEST(Sureness, TakesLimitsInCustomaryUnits) {
  Inputs inputs;
  EXPECT_FALSE(read_limits(dose, "volume-gal=1 temperature-f=1.8", inputs));
  EXPECT_NEAR(inputs.limit("volume-l").value(), 3.785411784, 1e-12);
  EXPECT_NEAR(inputs.limit("temperature-c").value(), 1, 1e-12);
}

TEST(Sureness, RefusesALimitThatIsNone) {
  for (const char* text : {"volume-l", "volume-l=", "volume-l=x", "volume-l=-1", "volume=1",
                           "practical-salinity=1", "=", "volume-l=1 depth-m=2"}) {
    Inputs inputs;
    const auto refusal = read_limits(dose, text, inputs);
    ASSERT_TRUE(refusal) << text;
    EXPECT_THAT(refusal->allowed, HasSubstr("volume-l, ")) << text;
  }
}

// At the target a batch needs no salt, and the side on which it would says how steep that is: 0.35
// of salinity is 0.35 g of salt in a kilogram, over the salt's own 0.95, to a few percent.
TEST(Sureness, AtAnEndUsesTheSideThatHasAnAnswer) {
  const Sure answer = sure(correct,
                           "--volume-l 100 --temperature-c 25 --from-practical-salinity 34.9 "
                           "--to-practical-salinity 35");
  const double grams = 2 * 102.3 * (0.6 / std::sqrt(3.0)) * 1.0047 / 0.95;
  EXPECT_NEAR(answer.uncertainty("add_salt_g") / grams, 1, 0.06);
}

TEST(Sureness, IsNotSaidWhereNothingIsMeasured) {
  const Sure answer = sure(density, "--practical-salinity 35 --temperature-c 25");
  EXPECT_THAT(answer.reckoned.sureness, HasSubstr("of the formula"));
}

// A quantity's example; but nothing that stands at an end of its range, where half of the draws are
// refused.
std::string far_from_ends(const Quantity& quantity) {
  if (&quantity == &correct) {
    return "--volume-l 100 --temperature-c 25 --from-practical-salinity 37 "
           "--to-practical-salinity 35 --vat-l 102";
  }
  if (&quantity == &blend) {
    return "--volume-l 80 --practical-salinity 35 --temperature-c 25 --other-volume-l 20 "
           "--other-practical-salinity 5 --other-temperature-c 5";
  }
  return quantity.example;
}

// JCGM 101:2008: the spread of many draws. TIDEWRIGHT_SEED chooses them.
class Drawn : public testing::TestWithParam<const Quantity*> {
 protected:
  static unsigned seed() {
    const char* const given = std::getenv("TIDEWRIGHT_SEED");
    return given ? static_cast<unsigned>(std::stoul(given)) : std::random_device{}();
  }

  Inputs draw(const Quantity& quantity, Inputs inputs) {
    for (const Option& option : quantity.options) {
      const std::string key = option_key(option);
      if (option.unit == Unit::text || !(inputs.has(key) || option.otherwise)) continue;
      const double limit = limit_of(option, inputs);
      inputs.set(key, inputs[key] + std::uniform_real_distribution(-limit, limit)(chance_));
    }
    return inputs;
  }

  const unsigned seed_ = seed();
  std::mt19937_64 chance_{seed_};
};

TEST_P(Drawn, SpreadsAsFarAsSaid) {
  const Quantity& quantity = *GetParam();
  const Inputs inputs = std::get<Inputs>(read_inputs(quantity, typed(far_from_ends(quantity))));
  const Reckoned plain = std::get<Reckoned>(quantity.reckon(inputs));
  Reckoned said = plain;
  add_sureness(quantity, inputs, said);
  const std::size_t count = said.results.size();
  constexpr int draws = 20'000;
  std::vector<double> sum(count);
  std::vector<double> squares(count);
  for (int i = 0; i < draws; ++i) {
    const Outcome outcome = quantity.reckon(draw(quantity, inputs));
    const auto& one = std::get<Reckoned>(outcome).results;
    ASSERT_EQ(one.size(), count);
    for (std::size_t at = 0; at < count; ++at) {
      const auto* value = std::get_if<double>(&one[at].value);
      if (!value) continue;
      sum[at] += *value;
      squares[at] += *value * *value;
    }
  }
  for (std::size_t at = 0; at < count; ++at) {
    if (plain.results[at].uncertainty || !said.results[at].uncertainty) continue;
    const double mean = sum[at] / draws;
    const double spread = std::sqrt(squares[at] / draws - mean * mean);
    // 20,000 draws know their own spread to 0.5 %; the rest is for second order.
    EXPECT_NEAR(2 * spread / *said.results[at].uncertainty, 1, 0.03)
        << said.results[at].key << " TIDEWRIGHT_SEED=" << seed_;
  }
}

INSTANTIATE_TEST_SUITE_P(Each, Drawn, testing::ValuesIn(quantities()),
                         [](const auto& each) { return std::string(each.param->name); });

}  // namespace
}  // namespace tidewright::commands::reckon
