// What the daemon takes of a small computer while nothing happens. Only of the release build
// (tests/CMakeLists.txt): sanitizers and debug builds take more.
#include <gtest/gtest.h>

#include <ctime>

#include "tests/support/broker.hpp"
#include "tests/support/daemon_process.hpp"
#include "tests/support/mqtt_client.hpp"
#include "tests/support/resident.hpp"
#include "tests/support/secured_broker.hpp"

namespace tidewright::support {
namespace {

using namespace std::chrono_literals;

constexpr long resident_kib_max = 15L * 1024;
// OpenSSL brings its own tables, and one more page of each of its parts that is touched.
constexpr long resident_kib_max_encrypted = 17L * 1024;

std::chrono::nanoseconds processor_time(pid_t pid) {
  clockid_t clock{};
  timespec used{};
  if (clock_getcpuclockid(pid, &clock) != 0 || clock_gettime(clock, &used) != 0) return 0s;
  return std::chrono::seconds{used.tv_sec} + std::chrono::nanoseconds{used.tv_nsec};
}

// At work: connected, everything published, and so many heartbeats (4 a second) have passed.
bool beats(MqttClient& home, int times) {
  for (int i = 0; i < times; ++i) {
    if (!home.await_topic("tidewright-heartbeat", 20s)) return false;
  }
  return true;
}

void fits(Broker& broker, const std::string& household, const std::string& uri, long kib_max) {
  MqttClient home(broker.port(), "home");
  home.subscribe("#");
  DaemonProcess daemon(household, uri);
  ASSERT_TRUE(home.await_topic("tidewright/waterroom/ledger", 20s)) << daemon.log();
  ASSERT_TRUE(beats(home, 8));
  const long resident = resident_kib(daemon.process().pid());
  ::testing::Test::RecordProperty("resident_kib", static_cast<int>(resident));
  EXPECT_GT(resident, 0);
  EXPECT_LE(resident, kib_max);
}

TEST(Thrift, TakesFifteenMebibytesAtMost) {
  Broker broker;
  fits(broker, source_file("config/minimal.toml"), broker.uri(), resident_kib_max);
}

TEST(Thrift, TakesSeventeenMebibytesAtMostOverTls) {
  SecuredBroker broker;
  fits(broker.plain(), broker.household(), broker.uri(), resident_kib_max_encrypted);
}

TEST(Thrift, TakesAQuarterOfAPercentOfACoreAtMostWhileNothingHappens) {
  Broker broker;
  MqttClient home(broker.port(), "home");
  home.subscribe("#");
  DaemonProcess daemon(source_file("config/minimal.toml"), broker.uri());
  ASSERT_TRUE(home.await_topic("tidewright/waterroom/ledger", 20s)) << daemon.log();
  ASSERT_TRUE(beats(home, 8));
  const auto began = std::chrono::steady_clock::now();
  const auto used_before = processor_time(daemon.process().pid());
  ASSERT_TRUE(beats(home, 40));  // 10 s
  const std::chrono::duration<double> used = processor_time(daemon.process().pid()) - used_before;
  const std::chrono::duration<double> passed = std::chrono::steady_clock::now() - began;
  RecordProperty("of_a_core_ppm", static_cast<int>(1e6 * used / passed));
  EXPECT_GT(used.count(), 0);
  EXPECT_LE(used / passed, 0.0025);
}

}  // namespace
}  // namespace tidewright::support
