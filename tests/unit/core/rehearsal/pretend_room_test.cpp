#include "core/rehearsal/pretend_room.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/support/rooms.hpp"

namespace tidewright::rehearsal {
namespace {

using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::seconds;

constexpr Instant dawn{hours{24 * 20'000}};

std::vector<Event> live(PretendRoom& pretend, Duration lasting) {
  std::vector<Event> said;
  const Instant end = pretend.now() + lasting;
  while (pretend.now() < end) pretend.advance(end, said);
  return said;
}

// ON as the daemon renews it: every third of the lease.
std::vector<Event> run_pump(PretendRoom& pretend, Duration lasting) {
  std::vector<Event> said;
  for (Duration run{0}; run < lasting; run += seconds{40}) {
    pretend.obey({0, true, seconds{10}});
    for (const Event& event : live(pretend, seconds{40})) said.push_back(event);
  }
  return said;
}

std::vector<Reading> readings_of(const std::vector<Event>& said, room::InstrumentIndex instrument) {
  std::vector<Reading> found;
  for (const Event& event : said) {
    const auto* reading = std::get_if<Reading>(&event.what);
    if (reading != nullptr && reading->instrument == instrument) found.push_back(*reading);
  }
  return found;
}

TEST(PretendRoom, SaysTheSameForTheSameSeed) {
  const room::Room room = support::minimal_room();
  PretendRoom one(room, {}, 7, dawn);
  PretendRoom two(room, {}, 7, dawn);
  const auto first = run_pump(one, hours{2});
  const auto second = run_pump(two, hours{2});
  ASSERT_EQ(first.size(), second.size());
  for (std::size_t i = 0; i < first.size(); ++i) {
    EXPECT_EQ(first[i].at, second[i].at);
    EXPECT_EQ(first[i].what.index(), second[i].what.index());
  }
}

// 280 L/day is 11.67 L/h at 25 degrees; a day of it gives 280 L less the osmotic pressure's share.
TEST(PretendRoom, MakesTheRatedWaterAtTwentyFiveDegrees) {
  const room::Room room = support::minimal_room();
  Settings settings;
  settings.weather = {Celsius{25}, Celsius{0}, Celsius{0}};
  settings.works.begins_filled = 0;
  settings.top_off_per_day = Litres{0};
  PretendRoom pretend(room, settings, 1, dawn);
  run_pump(pretend, hours{12});
  EXPECT_NEAR(pretend.works().tally().made.value, 140, 7);
  EXPECT_NEAR(pretend.works().vat().holding().value, pretend.works().tally().made.value, 1e-6);
}

TEST(PretendRoom, PlugOpensByItselfWhenNobodyRenews) {
  const room::Room room = support::minimal_room();
  PretendRoom pretend(room, {}, 1, dawn);
  pretend.obey({0, true, seconds{10}});
  live(pretend, seconds{119});
  EXPECT_TRUE(pretend.plug(0).on());
  live(pretend, seconds{2});
  EXPECT_FALSE(pretend.plug(0).on());
}

// The daemon says OFF again after 1, 2 and 4 s, before a slow plug has told of the first.
TEST(PretendRoom, PlugTellsInItsTimeHoweverOftenItIsToldTheSame) {
  const room::Room room = support::full_room();
  Settings settings;
  settings.plug.feedback_lags = seconds{5};
  PretendRoom pretend(room, settings, 1, dawn);
  pretend.obey({0, true, seconds{10}});
  live(pretend, seconds{20});
  std::vector<Event> said;
  for (int second = 0; second < 7; ++second) {
    pretend.obey({0, false, seconds{10}});
    for (const Event& event : live(pretend, seconds{1})) said.push_back(event);
  }
  const auto words = readings_of(said, *room::find(room, room::Quantity::feedback, 0));
  ASSERT_FALSE(words.empty());
  EXPECT_EQ(words.front().value, 0);
}

TEST(PretendRoom, PlugThatIsNotRenewedByOnOpensInMidRun) {
  room::Room room = support::minimal_room();
  room.actuators[0].lease_kind = room::LeaseKind::plug_fixed;
  PretendRoom pretend(room, {}, 1, dawn);
  run_pump(pretend, seconds{80});
  EXPECT_TRUE(pretend.plug(0).on());
  pretend.obey({0, true, seconds{10}});
  live(pretend, seconds{41});
  EXPECT_FALSE(pretend.plug(0).on());
}

TEST(PretendRoom, EveryKindOfLeaseIsPlayed) {
  // After 120 s of ON, renewed every 40 s, and then silence.
  const auto is_on_after = [](room::LeaseKind told, std::optional<room::LeaseKind> really,
                              seconds silence) {
    room::Room room = support::minimal_room();
    room.actuators[0].lease_kind = told;
    PretendRoom pretend(room, {}, 1, dawn);
    pretend.plug(0).faults.timer = really;
    run_pump(pretend, seconds{110});
    live(pretend, silence);
    return pretend.plug(0).on();
  };
  using room::LeaseKind;
  for (const LeaseKind kind : {LeaseKind::device, LeaseKind::plug, LeaseKind::hub}) {
    EXPECT_TRUE(is_on_after(kind, std::nullopt, seconds{70}));
    EXPECT_FALSE(is_on_after(kind, std::nullopt, seconds{130}));
  }
  EXPECT_FALSE(is_on_after(LeaseKind::plug_fixed, std::nullopt, seconds{20}));
  EXPECT_TRUE(is_on_after(LeaseKind::none, std::nullopt, minutes{60}));
  // Set up otherwise than the file says.
  EXPECT_TRUE(is_on_after(LeaseKind::plug, LeaseKind::none, minutes{60}));
  EXPECT_FALSE(is_on_after(LeaseKind::plug, LeaseKind::plug_fixed, seconds{20}));
}

TEST(PretendRoom, WeldedRelayOpensNeitherByCommandNorByTimer) {
  const room::Room room = support::minimal_room();
  PretendRoom pretend(room, {}, 1, dawn);
  run_pump(pretend, seconds{40});
  pretend.plug(0).faults.ignores_off = true;
  pretend.obey({0, false, seconds{10}});
  live(pretend, minutes{5});
  EXPECT_TRUE(pretend.plug(0).on());
}

TEST(PretendRoom, FeedbackFollowsTheRelay) {
  const room::Room room = support::minimal_room();
  PretendRoom pretend(room, {}, 1, dawn);
  live(pretend, seconds{1});
  pretend.obey({0, true, seconds{10}});
  const auto words = readings_of(live(pretend, seconds{1}), support::feedback);
  ASSERT_EQ(words.size(), 1U);
  EXPECT_EQ(words[0].value, 1);
}

TEST(PretendRoom, WaterGoesOnWithoutPumpWhereNothingStopsIt) {
  room::Room room = support::minimal_room();
  room.purifier->water_stops_with = room::WaterStopsWith::nothing;
  PretendRoom open(room, {}, 1, dawn);
  live(open, hours{1});
  EXPECT_GT(open.works().tally().made.value, 3);

  room.purifier->water_stops_with = room::WaterStopsWith::valve;
  PretendRoom closed(room, {}, 1, dawn);
  live(closed, hours{1});
  EXPECT_EQ(closed.works().tally().made.value, 0);
}

TEST(PretendRoom, FloatValveClosesWhenFullAndThePumpStopsAgainstIt) {
  room::Room room = support::full_room();
  Settings settings;
  settings.works.begins_filled = 0.96;
  PretendRoom pretend(room, settings, 1, dawn);
  for (int i = 0; i < 360; ++i) {
    pretend.obey({0, true, seconds{10}});
    pretend.obey({1, true, seconds{10}});
    live(pretend, seconds{20});
  }
  EXPECT_TRUE(pretend.works().float_valve.closed);
  EXPECT_FALSE(pretend.works().pump_turns());
  EXPECT_LT(pretend.truth(room.instruments[*room::find(room, room::Quantity::power, 0)]), 5);
  EXPECT_EQ(pretend.works().tally().spilled.value, 0);
}

TEST(PretendRoom, StuckFloatValveFloodsTheFloor) {
  room::Room room = support::minimal_room();
  Settings settings;
  settings.works.begins_filled = 0.99;
  PretendRoom pretend(room, settings, 1, dawn);
  pretend.works().float_valve.stuck = true;
  const auto said = run_pump(pretend, hours{1});
  EXPECT_GT(pretend.works().floor().value, 1);
  EXPECT_EQ(readings_of(said, support::floor).back().value, 1);
}

TEST(PretendRoom, WholePercentGaugeSpeaksInItsSteps) {
  const room::Room room = support::minimal_room();
  PretendRoom pretend(room, {}, 1, dawn);
  for (const Reading& reading : readings_of(live(pretend, hours{1}), support::level)) {
    EXPECT_NEAR(std::remainder(reading.value, 2), 0, 1e-9);  // 1 % of 200 L
  }
}

TEST(PretendRoom, ProductReadsHighAfterAnIdleNightAndZeroSoonAfter) {
  const room::Room room = support::minimal_room();
  PretendRoom pretend(room, {}, 1, dawn);
  run_pump(pretend, minutes{10});
  live(pretend, hours{8});
  run_pump(pretend, seconds{1});
  EXPECT_GT(pretend.works().solids(room::Place::product).value, 1);
  run_pump(pretend, minutes{3});
  EXPECT_LT(pretend.works().solids(room::Place::product).value, 0.1);
}

TEST(PretendRoom, SpentResinLetsThePermeateThrough) {
  const room::Room room = support::minimal_room();
  PretendRoom pretend(room, {}, 1, dawn);
  run_pump(pretend, minutes{30});
  pretend.works().spend_resin();
  EXPECT_GT(pretend.works().solids(room::Place::product).value, 5);
  pretend.works().replace_canisters();
  EXPECT_LT(pretend.works().solids(room::Place::product).value, 0.1);
}

TEST(PretendRoom, SilentSensorOnChangeIsDeclaredOfflineByItsHub) {
  room::Room room = support::minimal_room();
  room.instruments[support::floor].on_change = true;
  room.instruments[support::floor].has_availability = true;
  room.instruments[support::floor].reports_every = hours{2};
  PretendRoom pretend(room, {}, 1, dawn);
  bool online = false;
  const auto follow = [&](const std::vector<Event>& said) {
    for (const Event& event : said) {
      if (const auto* a = std::get_if<Availability>(&event.what)) online = a->online;
    }
  };
  follow(live(pretend, hours{4}));
  EXPECT_TRUE(online);
  pretend.voice(support::floor).faults.silent = true;
  follow(live(pretend, hours{5}));
  EXPECT_FALSE(online);
}

TEST(PretendRoom, SensorOnChangeSpeaksOfTheFloodAtOnce) {
  room::Room room = support::minimal_room();
  room.instruments[support::floor].on_change = true;
  room.instruments[support::floor].reports_every = hours{25};
  Settings settings;
  settings.messages_lost = 0;
  PretendRoom pretend(room, settings, 1, dawn);
  live(pretend, hours{1});
  pretend.works().spill(Litres{1});
  const auto words = readings_of(live(pretend, seconds{60}), support::floor);
  ASSERT_FALSE(words.empty());
  EXPECT_EQ(words[0].value, 1);
}

}  // namespace
}  // namespace tidewright::rehearsal
