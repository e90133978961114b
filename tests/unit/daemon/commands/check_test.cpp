// What `tidewright check` returns and where it writes. Exit codes are those of sysexits.h.
#include "daemon/commands/check.hpp"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <string>

namespace tidewright::commands {
namespace {

const std::string root = TIDEWRIGHT_SOURCE_DIR;

struct Said {
  int code = 0;
  std::string result;
  std::string messages;
};

Said said(const std::string& file, bool as_json = false) {
  testing::internal::CaptureStdout();
  testing::internal::CaptureStderr();
  Said all;
  all.code = check(file, as_json);
  std::fflush(stdout);
  std::fflush(stderr);
  all.result = testing::internal::GetCapturedStdout();
  all.messages = testing::internal::GetCapturedStderr();
  return all;
}

TEST(Check, AGoodFileIsToldOnStandardOutput) {
  const Said all = said(root + "/config/minimal.toml");
  EXPECT_EQ(all.code, 0);
  EXPECT_TRUE(all.messages.empty()) << all.messages;
  EXPECT_NE(all.result.find("Not protected"), std::string::npos);
}

TEST(Check, ABadFileIsToldOnStandardErrorWith78) {
  const std::string file = root + "/tests/broken/number_without_unit.toml";
  const Said all = said(file);
  EXPECT_EQ(all.code, 78);  // EX_CONFIG
  EXPECT_TRUE(all.result.empty());
  EXPECT_TRUE(all.messages.starts_with(file + ":3:10: error: ")) << all.messages;
}

TEST(Check, NoFileIs66) {
  const Said all = said(root + "/config/no_such_file.toml");
  EXPECT_EQ(all.code, 66);  // EX_NOINPUT
  EXPECT_NE(all.messages.find("cannot be read"), std::string::npos);
}

TEST(Check, AFolderIsNoFile) { EXPECT_EQ(said(root).code, 66); }

TEST(Check, AnEmptyFileIsWrongButRead) {
  const Said all = said("/dev/null");
  EXPECT_EQ(all.code, 78);
  EXPECT_NE(all.messages.find("`room` is missing"), std::string::npos) << all.messages;
}

TEST(Check, JsonCarriesItsUnitsInTheNames) {
  const auto document = nlohmann::json::parse(said(root + "/config/minimal.toml", true).result);
  // 100 L from START to STOP at 280 L/day.
  EXPECT_NEAR(document.at("marks").at(0).at("at_rated_flow_s").get<double>(), 100.0 / 280 * 86'400,
              1);
  EXPECT_TRUE(document.at("at_stake").at(0).contains("at_most_l"));
}

}  // namespace
}  // namespace tidewright::commands
