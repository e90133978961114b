// A hostile publisher at the same broker: a leak is answered with OFF all the same, and memory does
// not grow. TIDEWRIGHT_HOSTILE_SECONDS=60 and TIDEWRIGHT_TOPICS=1000000 in the long tier.
#include "tests/support/hostile.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cstdlib>

#include "core/rehearsal/chance.hpp"
#include "tests/support/broker.hpp"
#include "tests/support/daemon_process.hpp"
#include "tests/support/floor.hpp"
#include "tests/support/mqtt_client.hpp"
#include "tests/support/resident.hpp"
#include "tests/support/seed.hpp"

namespace tidewright::support {
namespace {

using namespace std::chrono_literals;
using Steady = std::chrono::steady_clock;

constexpr int per_second = 1'000;
// Of the release build; a sanitizer keeps what was freed.
constexpr long grown_kib_most = 4L * 1024;
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
constexpr bool memory_is_its_own = false;
#else
constexpr bool memory_is_its_own = true;
#endif

int setting(const char* name, int usual) {
  const char* said = std::getenv(name);
  return said != nullptr ? std::atoi(said) : usual;
}

class HostileBroker : public testing::Test {
 protected:
  void SetUp() override {
    home_.subscribe(daemon_path_.set);
    home_.subscribe(floor_path_.set);
    home_.subscribe("tidewright/online");
    ASSERT_TRUE(home_.await("tidewright/online", "online", 20s)) << daemon_.log();
    react(home_, daemon_path_);  // with its alarm and all that comes of it for the first time
    home_.await([](const Message&) { return false; }, 2s);
    daemon_path_.microseconds.clear();
    resident_kib_ = resident_kib(daemon_.process().pid());
  }
  long grown_kib() { return resident_kib(daemon_.process().pid()) - resident_kib_; }

  Broker broker_;
  MqttClient home_{broker_.port(), "home"};
  Floor floor_{broker_.port()};
  DaemonProcess daemon_{source_file("config/minimal.toml"), broker_.uri()};
  Path daemon_path_{"home/waterroom/leak", "home/waterroom/booster/set"};
  Path floor_path_{Floor::leak, Floor::set};
  long resident_kib_ = 0;
};

TEST_F(HostileBroker, AThousandMessagesASecondHoldUpNoOff) {
  const std::uint64_t seed = seeds({static_cast<std::uint64_t>(getpid())}).front();
  print_seed(seed);
  const auto lasting = std::chrono::seconds{setting("TIDEWRIGHT_HOSTILE_SECONDS", 10)};
  const bool long_tier = lasting > 10s;
  const auto began = Steady::now();
  std::uint64_t sent = 0;
  {
    const Hostile hostile(broker_.port(), per_second, seed);
    while (Steady::now() - began < lasting) {
      react(home_, floor_path_);
      react(home_, daemon_path_);
      home_.await([](const Message&) { return false; }, 100ms);
    }
    sent = hostile.sent();
  }
  const std::chrono::duration<double> took = Steady::now() - began;
  const double worst_ms = quantile(daemon_path_, 1) / 1'000;
  const double floor_worst_ms = quantile(floor_path_, 1) / 1'000;
  fmt::print(
      "{:.0f} hostile messages a second for {:.0f} s: OFF after p50 {:.2f} ms, worst {:.2f} ms of "
      "{} "
      "leaks, {} lost; a responder by hand p50 {:.2f} ms, worst {:.2f} ms; memory {} + {} KiB\n",
      static_cast<double>(sent) / took.count(), took.count(), quantile(daemon_path_, 0.5) / 1'000,
      worst_ms, daemon_path_.microseconds.size(), daemon_path_.lost,
      quantile(floor_path_, 0.5) / 1'000, floor_worst_ms, resident_kib_, grown_kib());
  EXPECT_GT(static_cast<double>(sent) / took.count(), per_second * 0.8);
  EXPECT_EQ(daemon_path_.lost, 0);
  EXPECT_GT(daemon_path_.microseconds.size(), 20U);
  // 50 ms is what is asked for; what even the responder by hand had to wait is the machine's.
  EXPECT_LE(worst_ms, long_tier ? 50 + floor_worst_ms : 500.0);
  if (memory_is_its_own) {
    EXPECT_LE(grown_kib(), grown_kib_most);
  }
  EXPECT_TRUE(daemon_.process().running()) << daemon_.log();
}

TEST_F(HostileBroker, RandomTopicsTakeNoMemory) {
  rehearsal::Chance chance{1};
  MqttClient stranger(broker_.port(), "stranger", 4);
  const int topics = setting("TIDEWRIGHT_TOPICS", 100'000);
  for (int i = 0; i < topics; ++i) {
    const char* const base = i % 2 == 0 ? "tidewright/waterroom" : "home/waterroom";
    stranger.publish(Message{.topic = fmt::format("{}/{:x}", base, chance.bits()), .payload = "1"});
  }
  react(home_, daemon_path_);
  EXPECT_EQ(daemon_path_.lost, 0);
  fmt::print("{} random topics: memory {} + {} KiB\n", topics, resident_kib_, grown_kib());
  if (memory_is_its_own) {
    EXPECT_LE(grown_kib(), grown_kib_most);
  }
}

}  // namespace
}  // namespace tidewright::support
