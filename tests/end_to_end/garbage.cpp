// What is no measurement changes a counter, and twice in a row a quality: no alarm, no command.
#include "tests/support/garbage.hpp"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>
#include <map>

#include "tests/support/broker.hpp"
#include "tests/support/daemon_process.hpp"
#include "tests/support/hand.hpp"

namespace tidewright::support {
namespace {

struct Sensor {
  std::string topic;
  std::string good;
  std::string source;  // its name in the household file
};

const std::map<Listens, Sensor> sensors{
    {Listens::for_a_number, {"temperature", "20", "room"}},
    {Listens::for_a_word, {"leak", "dry", "floor"}},
    {Listens::for_json, {"feed_temperature", R"({"t":12})", "feed"}},
    {Listens::for_json_word, {"drain", R"({"leak":"dry"})", "drain"}},
    {Listens::for_senml, {"tds", R"([{"n":"tds","u":"ppm","v":0}])", "product_tds"}},
};

// With the sensor's own time, in Unix seconds to the millisecond.
std::string dated(double degrees, int seconds_ago) {
  const auto then = std::chrono::system_clock::now() - std::chrono::seconds{seconds_ago};
  const std::chrono::duration<double> unix_seconds = then.time_since_epoch();
  return fmt::format(R"({{"t":{},"at":{:.3f}}})", degrees, unix_seconds.count());
}

class GarbageRoom : public testing::Test {
 protected:
  // Everything good, and the vat full: nothing is to be done.
  void SetUp() override {
    ASSERT_TRUE(hand_.daemon_is_online()) << daemon_.log();
    hand_.says("booster", "OFF");
    ASSERT_TRUE(hand_.says_until("vat_level", "95", "source/pure_level/quality", "good"))
        << daemon_.log();
    for (const auto& [listens, sensor] : sensors) {
      const std::string quality = "source/" + sensor.source + "/quality";
      ASSERT_TRUE(hand_.says_until(sensor.topic, sensor.good, quality, "good")) << quality;
    }
    alarms_ = hand_.shown_under("alarm/");
    commands_ = hand_.commands();
  }

  void expect_nothing_done() {
    EXPECT_EQ(hand_.shown_under("alarm/"), alarms_);
    EXPECT_EQ(hand_.commands(), commands_);
  }

  Broker broker_;
  DaemonProcess daemon_{source_file("tests/end_to_end/garbage_room.toml"), broker_.uri()};
  Hand hand_{broker_};
  std::map<std::string, std::string> alarms_;
  std::string commands_;
};

TEST_F(GarbageRoom, OneInARowIsCountedAndPassedOver) {
  std::map<std::string, int> refused;
  for (const Garbage& row : garbage()) {
    const Sensor& sensor = sensors.at(row.listens);
    hand_.says(sensor.topic, row.payload);
    hand_.says(sensor.topic, sensor.good);
    if (row.because != intake::Refused::nothing_there) ++refused[sensor.source];
  }
  for (const auto& [source, count] : refused) {
    EXPECT_TRUE(hand_.shows("source/" + source + "/refused", std::to_string(count)))
        << source << " " << hand_.shown("source/" + source + "/refused") << " of " << count;
    EXPECT_EQ(hand_.shown("source/" + source + "/quality"), "good") << source;
  }
  expect_nothing_done();
}

TEST_F(GarbageRoom, TwoInARowCostTheQualityAndGoodOnesBringItBack) {
  const Sensor& thermometer = sensors.at(Listens::for_a_number);
  hand_.says(thermometer.topic, "NaN");
  hand_.says(thermometer.topic, "1,5");
  EXPECT_TRUE(hand_.shows("source/room/quality", "bad"));
  expect_nothing_done();
  EXPECT_TRUE(hand_.says_until(thermometer.topic, "20", "source/room/quality", "good"));
  expect_nothing_done();
}

TEST_F(GarbageRoom, DuplicatesAndStrangersChangeNothing) {
  for (int i = 0; i < 20; ++i) {
    hand_.says("leak", "dry");
    hand_.says("vat_level", "95");
    hand_.says("vat_level/extra", "5");
    hand_.says("nobody", "wet");
  }
  hand_.says("feed_temperature", R"({"t":12.1})");  // what came before it has been heard
  EXPECT_TRUE(hand_.shows("source/feed/temperature_c", "12.1"));
  EXPECT_EQ(hand_.shown("source/floor/refused"), "0");
  expect_nothing_done();
}

TEST_F(GarbageRoom, WhatWasOvertakenChangesNothing) {
  const std::string newest = dated(12.1, 0);
  ASSERT_TRUE(hand_.says_until("feed_temperature", newest, "source/feed/temperature_c", "12.1"));
  hand_.says("feed_temperature", dated(3, 30));
  hand_.says("feed_temperature", newest);
  ASSERT_TRUE(hand_.says_until("temperature", "20.1", "source/room/temperature_c", "20.1"));
  EXPECT_EQ(hand_.shown("source/feed/temperature_c"), "12.1");
  expect_nothing_done();
}

}  // namespace
}  // namespace tidewright::support
