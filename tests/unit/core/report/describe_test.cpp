// What the household sees of a room on which events happen through the whole step.
#include <fmt/ranges.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/report/report.hpp"
#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using report::Thing;
using report::Value;
using support::Stage;

struct Seen : Stage {
  using Stage::Stage;
  Thing thing(const std::string& kind, const std::string& id = "") const {
    for (const Thing& thing : report::describe(room, state).things) {
      if (thing.kind == kind && thing.id == id) return thing;
    }
    ADD_FAILURE() << "no " << kind << "/" << id;
    return {};
  }
  Value value(const std::string& kind, const std::string& id, const std::string& name) const {
    for (const report::Field& field : thing(kind, id).fields) {
      if (field.name == name) return field.value;
    }
    ADD_FAILURE() << "no field " << name;
    return {};
  }
  std::string text(const std::string& kind, const std::string& id, const std::string& name) const {
    const Value held = value(kind, id, name);
    const auto* found = std::get_if<std::string>(&held);
    return found ? *found : "(no text)";
  }
  std::string waiting() const {
    const Value held = value("vat", "pure", "waiting_for");
    return fmt::format("{}", fmt::join(std::get<std::vector<std::string>>(held), "; "));
  }
};

const Value unknown = report::Unknown{};

TEST(Describe, TheVatSaysHowMuchIsMissingAndHowLongItTakes) {
  Seen seen;
  seen.begin();
  seen.wait(5min);
  EXPECT_EQ(seen.value("vat", "pure", "volume_l"), Value{60.0});
  EXPECT_EQ(seen.value("vat", "pure", "fill_percent"), Value{30.0});
  EXPECT_EQ(seen.text("vat", "pure", "state"), "filling");
  EXPECT_EQ(seen.value("vat", "pure", "ready"), Value{false});
  EXPECT_NE(seen.waiting().find(" L to go, about "), std::string::npos) << seen.waiting();
}

TEST(Describe, TheBalanceSaysWhatWasDrawnAndThatItIsUnusual) {
  Seen seen;
  seen.begin();
  seen.says(support::Minimal::level, 170);
  seen.wait(30min);
  EXPECT_EQ(seen.text("balance", "", "verdict"), "nothing unusual");
  EXPECT_EQ(seen.value("balance", "", "litres"), unknown);
  seen.says(support::Minimal::level, 60);  // more than two fifths of 200 L, and no draw is known
  seen.wait(10min);
  EXPECT_EQ(seen.text("balance", "", "verdict"), "unusual draw");
  const Value litres = seen.value("balance", "", "litres");
  ASSERT_TRUE(std::holds_alternative<double>(litres));
  EXPECT_NEAR(std::get<double>(litres), 170 - 60, 5);
  EXPECT_EQ(seen.value("balance", "", "confidence_percent"), unknown);
  seen.wait(31min);
  EXPECT_EQ(seen.text("balance", "", "verdict"), "nothing unusual");
}

TEST(Describe, EnoughWaterThatIsNotKnownToBeImpureIsReady) {
  Seen seen;
  seen.begin();
  seen.says(support::level, 170);
  seen.says(support::level, 170);
  EXPECT_EQ(seen.value("vat", "pure", "ready"), Value{true});
  EXPECT_EQ(seen.waiting(), "");
  EXPECT_EQ(seen.text("vat", "pure", "purity"), "not known");
  EXPECT_EQ(seen.value("vat", "pure", "ready_at"), unknown);
  EXPECT_EQ(seen.text("vat", "pure", "ready_at_why"), "it is ready now");
}

TEST(Describe, ALostGaugeIsNullWithAReasonAndNeverZero) {
  Seen seen;
  seen.begin();
  seen.wait_without(support::level, 10min);
  EXPECT_EQ(seen.value("vat", "pure", "volume_l"), unknown);
  EXPECT_NE(seen.text("vat", "pure", "volume_l_why").find("silent for"), std::string::npos);
  EXPECT_EQ(seen.value("vat", "pure", "ready"), Value{false});
  EXPECT_EQ(seen.waiting(), "a believable reading of the vat gauge");
  EXPECT_EQ(seen.text("vat", "pure", "state"), "paused");
}

TEST(Describe, TimesStandStillWhileOnlySecondsPass) {
  Seen seen;
  seen.begin();
  seen.wait(1h);
  const std::string full_at = seen.text("vat", "pure", "full_at");
  const std::string ready_at = seen.text("vat", "pure", "ready_at");
  EXPECT_NE(full_at, "(no text)");
  seen.wait(1s);
  EXPECT_EQ(seen.text("vat", "pure", "full_at"), full_at);
  EXPECT_EQ(seen.text("vat", "pure", "ready_at"), ready_at);
}

TEST(Describe, TheRejectionIsNeverTakenFromTheProduct) {
  Seen seen;
  seen.begin();
  seen.wait(1h);
  EXPECT_EQ(seen.value("purifier", "", "rejection_percent"), unknown);
  EXPECT_EQ(seen.text("purifier", "", "state"), "running");
}

TEST(Describe, TheActuatorShowsCommandFeedbackAndWhatHoldsIt) {
  Seen seen;
  seen.begin();
  seen.wait(5min);
  EXPECT_EQ(seen.value("actuator", "booster", "confirmed"), Value{true});
  seen.says(support::floor, 1);
  seen.wait(1s);
  EXPECT_EQ(seen.value("actuator", "booster", "commanded"), Value{false});
  EXPECT_EQ(seen.value("actuator", "booster", "confirmed"), Value{false});
  EXPECT_EQ(seen.value("actuator", "booster", "tripped"), Value{true});
  EXPECT_EQ(seen.text("actuator", "booster", "tripped_by"), "leak");
}

TEST(Describe, OnlyAlarmsOfWhatIsInstalledAreShown) {
  Seen seen;
  const auto things = report::describe(seen.room, seen.state).things;
  const auto shown = [&](const std::string& alarm) {
    return std::any_of(things.begin(), things.end(), [&](const Thing& thing) {
      return thing.kind == "alarm" && thing.id == alarm;
    });
  };
  EXPECT_TRUE(shown("leak"));
  EXPECT_FALSE(shown("vat_high_high"));
  EXPECT_FALSE(shown("pump_dry"));
}

TEST(Describe, ASourceIsOnlineOnlyWhileItSpeaks) {
  Seen seen;
  seen.begin();
  EXPECT_EQ(seen.value("source", "floor", "online"), Value{true});
  seen.wait_without(support::floor, 10min);
  EXPECT_EQ(seen.value("source", "floor", "online"), Value{false});
  EXPECT_EQ(seen.text("source", "floor", "quality"), "bad");
}

TEST(Describe, ASupplyIsUnknownUntilItIsCounted) {
  Seen seen{support::full_room()};
  seen.begin();
  EXPECT_EQ(seen.value("supply", "salt", "in_stock"), unknown);
  EXPECT_NE(seen.text("supply", "salt", "in_stock_why").find("`stocked`"), std::string::npos);
  seen.happen(Tell{.kind = TellKind::stocked, .ticket = 1, .value = 20, .supply = 0});
  EXPECT_EQ(seen.value("supply", "salt", "in_stock"), Value{20.0});
  EXPECT_EQ(seen.value("supply", "salt", "low"), Value{false});
}

TEST(Describe, TheResinSaysWhyThereIsNoForecastYet) {
  Seen seen{support::full_room()};
  seen.begin();
  EXPECT_EQ(seen.value("resin", "lead", "litres_left"), unknown);
  EXPECT_NE(seen.text("resin", "lead", "litres_left_why").find("nobody has told"),
            std::string::npos);
  seen.state.ledger.resin_changed = seen.now - 10 * 24h;
  seen.state.ledger.resin = {Litres{1000}, 0.2, 0.36};  // half of 1.5 L x 0.6 eq/L x 0.8
  EXPECT_NEAR(std::get<double>(seen.value("resin", "lead", "used_percent")), 50, 1e-9);
  EXPECT_EQ(seen.text("resin", "lead", "advice"), "nothing to do yet");
}

}  // namespace
}  // namespace tidewright
