// `tidewright ask` and `tidewright tell` as a person types them, against the running daemon.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sysexits.h>

#include "tests/support/broker.hpp"
#include "tests/support/daemon_process.hpp"
#include "tests/support/hand.hpp"

namespace tidewright::support {
namespace {

using namespace std::chrono_literals;
using testing::HasSubstr;

struct Printed {
  int code = -1;
  std::string text;
};

Printed type(std::vector<std::string> words, const std::string& broker_uri) {
  const TemporaryDirectory directory;
  words.insert(words.begin(), program());
  words.insert(words.end(), {"--broker", broker_uri});
  Process process(words, directory.path() + "/out");
  const auto code = process.wait(30s);
  return {code.value_or(-1), read_file(directory.path() + "/out")};
}

class CommandLine : public testing::Test {
 protected:
  void SetUp() override { ASSERT_TRUE(hand_.daemon_is_online()) << daemon_.log(); }
  Printed typed(std::vector<std::string> words) { return type(std::move(words), broker_.uri()); }

  Broker broker_;
  DaemonProcess daemon_{source_file("config/minimal.toml"), broker_.uri()};
  Hand hand_{broker_};
};

TEST_F(CommandLine, AResetArmsAndConfirms) {
  ASSERT_TRUE(hand_.says_until("leak", "wet", "alarm/leak/latched", "true"));
  Printed printed = typed({"ask", "reset", "leak", "--who", "ann"});
  EXPECT_EQ(printed.code, EX_NOPERM);
  EXPECT_THAT(printed.text, HasSubstr("Refused: "));
  EXPECT_THAT(printed.text, HasSubstr("must report dry twice"));

  ASSERT_TRUE(hand_.says_until("leak", "dry", "source/floor/quality", "good"));
  hand_.says("leak", "dry");
  hand_.says("leak", "dry");
  EXPECT_EQ(typed({"ask", "acknowledge", "leak", "--who", "ann"}).code, EX_OK);
  printed = typed({"ask", "reset", "leak", "--who", "ann"});
  EXPECT_EQ(printed.code, EX_OK);
  EXPECT_THAT(printed.text, HasSubstr("Done: reset; nothing starts by itself"));
  EXPECT_TRUE(hand_.shows("alarm/leak/latched", "false"));
}

TEST_F(CommandLine, EveryOtherRequest) {
  for (const std::vector<std::string>& words : std::vector<std::vector<std::string>>{
           {"ask", "shelve", "resin_breakthrough", "--minutes", "60", "--who", "ann"},
           {"ask", "unshelve", "resin_breakthrough"},
           {"ask", "start", "--minutes", "30"},
           {"ask", "stop"},
           {"ask", "test"},
           {"tell", "measured", "product_tds", "0", "--who", "ann"},
           {"tell", "measured", "pure_level", "45", "%"},
           {"tell", "rotated"},
           {"tell", "replaced"},
           {"tell", "tested", "product_tds"},
           {"ask", "bypass", "frost", "--minutes", "5", "--why", "the probe fell"},
           {"ask", "end_bypass", "frost"}}) {
    const Printed printed = typed(words);
    EXPECT_EQ(printed.code, EX_OK) << words[1] << ": " << printed.text;
    EXPECT_THAT(printed.text, HasSubstr("Done")) << words[1];
  }
  const Printed json = typed({"tell", "rotated", "--json"});
  EXPECT_THAT(json.text, HasSubstr(R"("tell":"rotated")"));
}

TEST_F(CommandLine, MistakesAreExplained) {
  Printed printed = typed({"ask", "aknowledge", "leak"});
  EXPECT_EQ(printed.code, EX_USAGE);
  EXPECT_THAT(printed.text, HasSubstr(R"(Did you mean "acknowledge"?)"));
  printed = typed({"ask", "acknowledge", "leek"});
  EXPECT_EQ(printed.code, EX_NOPERM);
  EXPECT_THAT(printed.text,
              HasSubstr(R"(There is no alarm "leek" in this room. Did you mean "leak"?)"));
  printed = typed({"ask", "stop", "--room", "cellar", "--patience", "1"});
  EXPECT_EQ(printed.code, EX_TEMPFAIL);
  EXPECT_THAT(printed.text, HasSubstr(R"(nothing answers for the room "cellar")"));
}

TEST_F(CommandLine, AStoppedDaemonIsSaidToBeOffline) {
  EXPECT_EQ(daemon_.terminate(5s), 0);
  const Printed printed = typed({"ask", "stop", "--patience", "1"});
  EXPECT_EQ(printed.code, EX_TEMPFAIL);
  EXPECT_THAT(printed.text, HasSubstr("tidewright/online says offline"));
}

TEST(CommandLineAlone, WithoutDaemonOrBroker) {
  std::string uri;
  {
    const Broker broker;
    uri = broker.uri();
    const Printed printed = type({"ask", "stop", "--patience", "1"}, uri);
    EXPECT_EQ(printed.code, EX_TEMPFAIL);
    EXPECT_THAT(printed.text, HasSubstr("Is the daemon running?"));
  }
  const Printed printed = type({"ask", "stop", "--patience", "1"}, uri);
  EXPECT_EQ(printed.code, EX_UNAVAILABLE);
  EXPECT_THAT(printed.text, HasSubstr("cannot be reached"));
}

}  // namespace
}  // namespace tidewright::support
