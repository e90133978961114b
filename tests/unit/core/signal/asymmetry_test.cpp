// Danger is believed at any quality but garbage, safety at good alone: each check, in both
// directions. "Dangerous" and "safe" are said in such a way that the check finds fault with it.
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <string>

#include "core/interlock/causes.hpp"
#include "tests/unit/core/signal/bench.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using support::Full;
using support::Metered;
using support::Minimal;

struct Check {
  const char* name;
  // The instrument says `value`, and the check has something against it.
  std::function<void(SignalBench&, double value)> say;
};

void silence_twin(SignalBench& bench) { bench.wait_without(Metered::level_twin, 10min); }

const Check of_the_gauge[] = {
    {"retained",
     [](SignalBench& bench, double litres) {
       bench.happen(Link{.up = false});
       bench.happen(Link{.up = true});
       bench.happen(Reading{Minimal::level, litres, Arrival::retained});
     }},
    {"plausible range",
     [](SignalBench& bench, double litres) {
       auto& gauge = bench.room.instruments[Minimal::level];
       gauge.plausible_low = 120;
       gauge.plausible_high = 150;
       silence_twin(bench);
       bench.says(Minimal::level, litres);
     }},
    {"stale",
     [](SignalBench& bench, double litres) {
       bench.hold(litres);
       for (int minute = 0; minute < 10; ++minute) {  // and nobody speaks
         bench.now += 1min;
         bench.happen(Tick{});
       }
     }},
    {"twins",
     [](SignalBench& bench, double litres) {
       bench.says(Minimal::level, litres);
       bench.says(Metered::level_twin, litres - 40);
       bench.wait(5min);
     }},
    {"gauge and flow",
     [](SignalBench& bench, double litres) {
       bench.fill_until_off(10, 4);
       bench.hold(litres);
     }},
};

// The measure of the checks below: with nothing against it, the same word is believed.
TEST(AGoodGauge, IsBelievedInBothDirections) {
  SignalBench bench;
  bench.hold(60);
  EXPECT_EQ(picture::draw(bench.room, bench.state).level, Litres{60});
  EXPECT_TRUE(bench.is_on());
  bench.hold(190);
  EXPECT_FALSE(bench.is_on());
}

class GaugeCheck : public testing::TestWithParam<Check> {};

TEST_P(GaugeCheck, BelievesTheDanger) {
  SignalBench bench;
  GetParam().say(bench, 190);
  const auto picture = picture::draw(bench.room, bench.state);
  EXPECT_NE(bench.quality(Minimal::level), Quality::good);
  EXPECT_TRUE(interlock::vat_at_stop(picture, bench.state.findings));
  EXPECT_FALSE(bench.is_on());
}

TEST_P(GaugeCheck, DoesNotBelieveTheSafety) {
  SignalBench bench;
  GetParam().say(bench, 60);
  const auto picture = picture::draw(bench.room, bench.state);
  EXPECT_FALSE(picture.level);
  EXPECT_FALSE(bench.is_on());
}

INSTANTIATE_TEST_SUITE_P(All, GaugeCheck, testing::ValuesIn(of_the_gauge), [](const auto& param) {
  std::string name = param.param.name;
  std::replace(name.begin(), name.end(), ' ', '_');
  return name;
});

// Garbage: the last word stands, once; then nothing is known.
TEST(Garbage, IsNeitherDangerNorSafety) {
  SignalBench bench;
  bench.hold(60);
  bench.says(Minimal::level, 4000);
  bench.says(Metered::level_twin, 4000);
  EXPECT_EQ(picture::draw(bench.room, bench.state).level, Litres{60});
  bench.says(Minimal::level, 4000);
  bench.says(Metered::level_twin, 4000);
  const auto picture = picture::draw(bench.room, bench.state);
  EXPECT_FALSE(picture.level);
  EXPECT_FALSE(interlock::vat_at_stop(picture, bench.state.findings));
}

const Check of_the_leak_sensor[] = {
    {"retained",
     [](SignalBench& bench, double wet) {
       bench.happen(Link{.up = false});
       bench.happen(Link{.up = true});
       bench.happen(Reading{Minimal::floor, wet, Arrival::retained});
     }},
    {"dated",
     [](SignalBench& bench, double wet) {
       bench.happen(Link{.up = false});
       bench.happen(Link{.up = true});
       bench.happen(Reading{Minimal::floor, wet, Arrival::dated, bench.now - 1s});
     }},
    {"overtaken",
     [](SignalBench& bench, double wet) {
       bench.happen(Reading{Minimal::floor, 1 - wet, Arrival::live, bench.now});
       bench.happen(Reading{Minimal::floor, wet, Arrival::live, bench.now - 1s});
     }},
    {"stale",
     [](SignalBench& bench, double wet) {
       bench.says(Minimal::floor, wet);
       bench.wait_without(Minimal::floor, 10min);
     }},
    {"offline",
     [](SignalBench& bench, double wet) {
       bench.says(Minimal::floor, wet);
       bench.happen(Availability{Minimal::floor, false});
     }},
};

TEST(GoodLeakSensors, AreBelievedInBothDirections) {
  SignalBench bench;
  EXPECT_EQ(picture::draw(bench.room, bench.state).leak_watch, picture::Watch::good);
  EXPECT_TRUE(bench.is_on());
  bench.says(Minimal::floor, 1);
  EXPECT_FALSE(bench.is_on());
}

class LeakCheck : public testing::TestWithParam<Check> {};

TEST_P(LeakCheck, BelievesWet) {
  SignalBench bench;
  GetParam().say(bench, 1);
  EXPECT_TRUE(picture::draw(bench.room, bench.state).wet);
  EXPECT_TRUE(bench.state.latches[room::RuleId::leak].set);
  EXPECT_FALSE(bench.is_on());
}

TEST_P(LeakCheck, DoesNotBelieveDry) {
  SignalBench bench;
  GetParam().say(bench, 0);
  bench.says(Full::second_floor, 0);
  const auto picture = picture::draw(bench.room, bench.state);
  EXPECT_TRUE(picture.wet || picture.leak_watch != picture::Watch::good);
  EXPECT_FALSE(bench.is_on());
}

INSTANTIATE_TEST_SUITE_P(All, LeakCheck, testing::ValuesIn(of_the_leak_sensor),
                         [](const auto& param) { return std::string{param.param.name}; });

// A thermometer that shows what cannot be in this room: frost is believed all the same.
TEST(ThermometerInDoubt, FrostIsBelieved) {
  SignalBench bench;
  bench.happen(Ask{.kind = AskKind::stop, .ticket = 1});
  bench.room.instruments[Minimal::warmth].plausible_low = 10;
  bench.says(Minimal::warmth, 2);
  ASSERT_EQ(bench.quality(Minimal::warmth), Quality::uncertain);
  const auto picture = picture::draw(bench.room, bench.state);
  EXPECT_TRUE(interlock::frost(picture, bench.state.findings));
  EXPECT_FALSE(picture.temperature_known) << "and nothing is reckoned with it";
}

// A product meter that its twin contradicts: salt is believed, purity is not.
class ProductInDoubt : public testing::Test {
 protected:
  void say(double ppm, double twin) {
    bench.says(Minimal::product, ppm);
    bench.says(Metered::product_twin, twin);
    bench.wait(20min);
    ASSERT_EQ(bench.quality(Minimal::product), Quality::uncertain);
    doubted_since = bench.now;
    for (int half_hours = 1; half_hours <= 6; ++half_hours) {
      bench.hold(60 + 2 * half_hours);
      bench.wait(30min);
    }
    ASSERT_TRUE(bench.is_on());
  }
  SignalBench bench;
  Instant doubted_since;
};

TEST_F(ProductInDoubt, SaltIsBelieved) {
  say(0, 8);
  EXPECT_TRUE(bench.state.findings[room::RuleId::resin_breakthrough].active);
  EXPECT_GT(bench.state.ledger.product.items[0].at, doubted_since);
}

TEST_F(ProductInDoubt, PurityIsNot) {
  bench.room.purifier->notify_at = PartsPerMillion{50};
  say(0, 8);
  EXPECT_LE(bench.state.ledger.product.items[0].at, doubted_since);
}

}  // namespace
}  // namespace tidewright
