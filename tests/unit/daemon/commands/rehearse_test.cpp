// Bad days with a household's own file, as a person reads them.
#include "daemon/commands/rehearse.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sysexits.h>

#include <nlohmann/json.hpp>
#include <sstream>

namespace tidewright::commands {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

std::string config(const std::string& name) {
  return std::string{TIDEWRIGHT_SOURCE_DIR} + "/config/" + name;
}

TEST(RehearseCommand, SaysWhatBefellAndWhatCameOfIt) {
  std::ostringstream out;
  EXPECT_EQ(rehearse({.config = config("rung-3.toml"), .seed = 5, .days = 2}, out), 0);
  EXPECT_THAT(out.str(), AllOf(HasSubstr("seed 5: "), HasSubstr("seed 6: "), HasSubstr("\nat "),
                               HasSubstr("under this single fault"), HasSubstr("no limit"),
                               HasSubstr("2 days, 0 violations"), Not(HasSubstr("VIOLATED"))));
}

TEST(RehearseCommand, SameSeedSameDays) {
  std::ostringstream once, again;
  rehearse({.config = config("demo.toml"), .seed = 3, .days = 1}, once);
  rehearse({.config = config("demo.toml"), .seed = 3, .days = 1}, again);
  EXPECT_EQ(once.str(), again.str());
}

TEST(RehearseCommand, SaysTheSameToAProgram) {
  std::ostringstream out;
  const Rehearse wanted{.config = config("minimal.toml"), .seed = 1, .days = 1, .json = true};
  EXPECT_EQ(rehearse(wanted, out), 0);
  const auto document = nlohmann::json::parse(out.str());
  EXPECT_EQ(document.at("days").size(), 1U);
  EXPECT_THAT(document.at("days").at(0).at("night").get<std::string>(), HasSubstr("seed 1\n"));
  EXPECT_EQ(document.at("wet_to_off").at(0).at("fault"), "none");
}

TEST(RehearseCommand, AFileThatIsNotThereIsSaid) {
  std::ostringstream out;
  EXPECT_EQ(rehearse({.config = config("nowhere.toml")}, out), EX_NOINPUT);
}

}  // namespace
}  // namespace tidewright::commands
