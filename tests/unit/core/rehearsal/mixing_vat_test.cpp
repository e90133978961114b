#include "core/rehearsal/mixing_vat.hpp"

#include <gtest/gtest.h>

#include <chrono>

#include "core/rehearsal/pretend_room.hpp"
#include "tests/support/rooms.hpp"

namespace tidewright::rehearsal {
namespace {

using std::chrono::minutes;
using std::chrono::seconds;

constexpr Instant dawn{std::chrono::hours{24 * 20'000}};

// ON as the daemon renews it.
void run(PretendRoom& pretend, std::initializer_list<room::Role> roles, const room::Room& room,
         Duration lasting) {
  std::vector<Event> said;
  const Instant end = pretend.now() + lasting;
  while (pretend.now() < end) {
    for (const room::Role role : roles) pretend.obey({*room::find(room, role), true, seconds{10}});
    pretend.advance(std::min(end, pretend.now() + seconds{10}), said);
  }
  for (const room::Role role : roles) pretend.obey({*room::find(room, role), false, seconds{10}});
}

// 300 W for an hour are 1,080,000 J; 50 L (and the 2 L of the walls) take 4,186 J for each litre
// and degree (the calorie's definition): 5.0 degrees, less the little that is lost meanwhile.
TEST(MixingVat, WarmsAsItsHeaterAndItsLitresSay) {
  MixingVat vat(Litres{100}, {}, Celsius{20});
  for (int minute = 0; minute < 60; ++minute) vat.live(minutes{1}, true, Celsius{20});
  EXPECT_NEAR(vat.temperature().value, 24.96 - 0.2, 0.1);
  for (int hour = 0; hour < 200; ++hour) vat.live(minutes{60}, false, Celsius{12});
  EXPECT_NEAR(vat.temperature().value, 12, 0.01);
}

TEST(MixingVat, ABareHeaterWarmsNoWater) {
  MixingVat vat(Litres{100}, {}, Celsius{20});
  vat.draw(Litres{40});
  ASSERT_TRUE(vat.heater_is_bare());
  vat.live(minutes{60}, true, Celsius{20});
  EXPECT_DOUBLE_EQ(vat.temperature().value, 20);
}

// 600 L/h move 10 L in a minute.
TEST(MixingVat, WhatTheTransferPumpMovesIsInOneVatOrTheOtherOrOnTheFloor) {
  const room::Room room = support::whole_room();
  Settings settings;
  settings.top_off_per_day = Litres{0};
  PretendRoom pretend(room, settings, 1, dawn);
  const Works& works = pretend.works();
  const Litres before = works.vat().holding();
  run(pretend, {room::Role::transfer_pump}, room, minutes{1});
  EXPECT_NEAR(works.mixing()->holding().value, 60, 0.5);
  EXPECT_NEAR((before - works.vat().holding()).value, 10, 0.5);
  EXPECT_FALSE(pretend.floor_is_wet());
  run(pretend, {room::Role::transfer_pump}, room, minutes{5});
  EXPECT_NEAR(works.mixing()->holding().value, 100, 1e-9);
  EXPECT_NEAR(works.floor().value, 10, 0.5);
}

TEST(MixingVat, ItsInstrumentsTellTheTruth) {
  const room::Room room = support::whole_room();
  PretendRoom pretend(room, {}, 1, dawn);
  pretend.works().draw_mixed(Litres{20});
  EXPECT_DOUBLE_EQ(pretend.truth(room.instruments[support::mixing_level]), 30);
  run(pretend, {room::Role::heater}, room, minutes{60});
  EXPECT_GT(pretend.truth(room.instruments[support::mixing_warmth]), 24);
}

// Diverted product is made and does not fill; a flush takes feed and makes nothing.
TEST(MixingVat, DivertAndFlushLeaveTheVatAsItIs) {
  for (const room::Role role : {room::Role::divert_valve, room::Role::flush_valve}) {
    const room::Room room = support::whole_room();
    Settings settings;
    settings.top_off_per_day = Litres{0};
    PretendRoom pretend(room, settings, 1, dawn);
    const Litres before = pretend.works().vat().holding();
    run(pretend, {room::Role::booster_pump, room::Role::feed_valve, role}, room, minutes{20});
    const Tally& tally = pretend.works().tally();
    EXPECT_EQ(pretend.works().vat().holding().value, before.value);
    EXPECT_EQ(tally.diverted.value, tally.made.value);
    EXPECT_EQ(tally.made > Litres{0}, role == room::Role::divert_valve);
    EXPECT_GT(tally.wasted.value, 1);
  }
}

}  // namespace
}  // namespace tidewright::rehearsal
