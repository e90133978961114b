// The real daemon with records that cannot be read, and on a disk that takes none: the room is
// safe, and a person is told.
#include <fcntl.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <linux/fs.h>
#include <sys/ioctl.h>
#include <sys/mount.h>
#include <sysexits.h>

#include <algorithm>
#include <filesystem>
#include <fstream>

#include "daemon/base/descriptor.hpp"
#include "tests/support/broker.hpp"
#include "tests/support/daemon_process.hpp"
#include "tests/support/eventually.hpp"
#include "tests/support/hand.hpp"
#include "tests/support/small_disk.hpp"

namespace tidewright::support {
namespace {

namespace fs = std::filesystem;
using namespace std::chrono_literals;
using testing::HasSubstr;
using testing::Not;

class Records : public testing::Test {
 protected:
  void SetUp() override { ASSERT_TRUE(hand_.daemon_is_online()) << daemon_.log(); }

  Broker broker_;
  Hand hand_{broker_};
  DaemonProcess daemon_{source_file("config/minimal.toml"), broker_.uri(), {"--pace", "60"}};
};

TEST_F(Records, AStateThatCannotBeReadHoldsTheWaterUntilAPersonHasLooked) {
  ASSERT_EQ(daemon_.terminate(5s), 0);
  const std::string state = daemon_.state_directory() + "/state.db";
  std::ofstream(state, std::ios::in | std::ios::binary) << "Dear Ann, the floor is wet.";
  daemon_.start();
  ASSERT_TRUE(hand_.shows("alarm/records_unreadable/latched", "true")) << daemon_.log();
  EXPECT_THAT(daemon_.log(), HasSubstr("could not be read"));
  EXPECT_THAT(daemon_.log(), HasSubstr("look at the room, then reset records_unreadable"));
  EXPECT_TRUE(std::any_of(fs::directory_iterator(daemon_.state_directory()),
                          fs::directory_iterator(), [](const auto& file) {
                            return file.path().string().find(".unreadable-2") != std::string::npos;
                          }));
  // Not before the floor was seen dry, and five minutes of the room have passed.
  const std::string reset = R"("ask":"reset","alarm":"records_unreadable")";
  EXPECT_FALSE(hand_.ask(reset).done);
  hand_.says("vat_level", "30");
  Said armed;
  ASSERT_TRUE(eventually(20s, [&] {
    hand_.says("leak", "dry");
    armed = hand_.ask(reset);
    return armed.done;
  }));
  EXPECT_THAT(hand_.commands(), Not(HasSubstr("ON")));
  const std::string confirm =
      R"("ask":"confirm","alarm":"records_unreadable","token":)" + std::to_string(armed.token);
  EXPECT_TRUE(hand_.ask(confirm).done);
  EXPECT_TRUE(hand_.shows("alarm/records_unreadable/latched", "false"));
}

TEST_F(Records, AFullDiskDelaysNoOffIsToldAndIsForgottenWhenThereIsRoom) {
  ASSERT_EQ(daemon_.terminate(5s), 0);
  const SmallDisk disk{daemon_.state_directory(), 1024};
  ASSERT_TRUE(disk.mounted()) << "needs root";
  const fs::path filler = disk.path() / "filler";
  daemon_.start();
  ASSERT_TRUE(hand_.client().await("tidewright/online", "online", 20s)) << daemon_.log();
  std::ofstream(filler) << std::string(1024UL * 1024, 'x');
  hand_.says("leak", "wet");
  EXPECT_TRUE(hand_.client().await("home/waterroom/booster/set", "OFF", 5s));
  EXPECT_TRUE(hand_.shows("alarm/leak/latched", "true")) << daemon_.log();
  // Each wet report asks for one more record, until one finds no room.
  EXPECT_TRUE(eventually(30s, [&] {
    hand_.says("leak", "dry");
    hand_.says("leak", "wet");
    hand_.shows("ledger/made_total_l", "0.0");
    return hand_.shown("alarm/store_failed/state") == "unacknowledged";
  })) << daemon_.log();
  fs::remove(filler);
  EXPECT_TRUE(hand_.shows("alarm/store_failed/state", "returned_unacknowledged")) << daemon_.log();
  daemon_.kill();
  while (hand_.client().next(1s)) {
  }
  daemon_.start();
  const std::string latched = "tidewright/waterroom/value/alarm/leak/latched";
  const auto shown = hand_.client().await_topic(latched, 20s);
  ASSERT_TRUE(shown) << daemon_.log();
  EXPECT_EQ(shown->payload, "true");
}

TEST_F(Records, ASecondDaemonOnTheSameRecordsIsRefused) {
  const TemporaryDirectory directory;
  Process second({program(), "run", "--config", source_file("config/minimal.toml"), "--broker",
                  broker_.uri(), "--state", daemon_.state_directory()},
                 directory.path() + "/log");
  EXPECT_EQ(second.wait(20s), EX_CANTCREAT);
  EXPECT_THAT(read_file(directory.path() + "/log"),
              HasSubstr("Another tidewright keeps its state"));
  EXPECT_TRUE(daemon_.process().running());
}

// What stands in the household's file may change between two runs; what was latched stays.
TEST(ChangedHousehold, ANewTopicUnitLimitAndNameKeepTheLatchAndTheLitres) {
  const TemporaryDirectory directory;
  const std::string file = directory.path() + "/room.toml";
  std::string text = read_file(source_file("config/minimal.toml"));
  write_file(file, text);
  Broker broker;
  Hand hand{broker};
  DaemonProcess daemon{file, broker.uri()};
  ASSERT_TRUE(hand.daemon_is_online()) << daemon.log();
  ASSERT_TRUE(hand.says_until("vat_level", "30", "vat/pure/volume_l", "60.0"));
  hand.says("leak", "wet");
  ASSERT_TRUE(hand.shows("alarm/leak/latched", "true")) << daemon.log();
  const std::string occurrence = hand.shown("alarm/leak/occurrence");
  ASSERT_EQ(daemon.terminate(5s), 0);

  const auto change = [&](const std::string& before, const std::string& after) {
    const auto at = text.find(before);
    ASSERT_NE(at, std::string::npos) << before;
    text.replace(at, before.size(), after);
  };
  change(R"(vat_level", unit = "%", step = "1 %")", R"(litres", unit = "L", step = "1 L")");
  change("[leak.floor]", "[leak.drain]");
  change(R"(stop_at = "90 %")", R"(stop_at = "80 %")");
  write_file(file, text);
  while (hand.client().next(1s)) {
  }
  daemon.start();
  const std::string value = "tidewright/waterroom/value/";
  const auto latched = hand.client().await_topic(value + "alarm/leak/latched", 20s);
  ASSERT_TRUE(latched) << daemon.log();
  EXPECT_EQ(latched->payload, "true");
  EXPECT_TRUE(hand.shows("alarm/leak/occurrence", occurrence));
  hand.says("vat_level", "99");  // nobody listens to it any more
  EXPECT_TRUE(hand.says_until("litres", "70", "vat/pure/volume_l", "70.0"));
  EXPECT_TRUE(hand.says_until("leak", "dry", "source/drain/quality", "good"));
  EXPECT_TRUE(eventually(10s, [&] {
    hand.says("leak", "dry");  // twice, or the reset is refused
    return hand.ask(R"("ask":"reset","alarm":"leak")").done;
  })) << daemon.log();
}

}  // namespace
}  // namespace tidewright::support
