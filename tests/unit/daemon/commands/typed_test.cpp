#include "daemon/commands/typed.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tidewright::commands {
namespace {

using hub::Verb;
using testing::HasSubstr;

std::string typed(Verb verb, std::vector<std::string> words, std::optional<double> minutes = {},
                  std::optional<std::uint32_t> occurrence = {}) {
  const Typed as_typed{verb, std::move(words), "ann", minutes, occurrence};
  const auto request = as_request(as_typed, "7");
  if (const auto* usage = std::get_if<Usage>(&request)) return usage->problem;
  return std::get<std::string>(request);
}

TEST(Typed, AShelvingMayHaveItsReasonAndNothingElseMay) {
  Typed typed{Verb::ask, {"shelve", "vat_low"}, "ann", 60};
  typed.why = "on holiday";
  EXPECT_THAT(std::get<std::string>(as_request(typed, "7")), HasSubstr(R"("why":"on holiday")"));
  typed.words = {"stop"};
  EXPECT_TRUE(std::holds_alternative<Usage>(as_request(typed, "7")));
}

// docs/ask-and-tell.md, as a person types each of its rows.
TEST(Typed, EveryRequestAsItIsTyped) {
  EXPECT_EQ(typed(Verb::ask, {"acknowledge", "leak"}),
            R"({"ask":"acknowledge","alarm":"leak","who":"ann","id":"7"})");
  EXPECT_EQ(typed(Verb::ask, {"acknowledge", "leak"}, {}, 3),
            R"({"ask":"acknowledge","alarm":"leak","occurrence":3,"who":"ann","id":"7"})");
  EXPECT_EQ(typed(Verb::ask, {"shelve", "vat_low"}, 60),
            R"({"ask":"shelve","alarm":"vat_low","minutes":60.0,"who":"ann","id":"7"})");
  EXPECT_EQ(typed(Verb::ask, {"unshelve", "vat_low"}),
            R"({"ask":"unshelve","alarm":"vat_low","who":"ann","id":"7"})");
  EXPECT_EQ(typed(Verb::ask, {"reset", "leak"}),
            R"({"ask":"reset","alarm":"leak","who":"ann","id":"7"})");
  EXPECT_EQ(typed(Verb::ask, {"confirm", "leak", "123456"}),
            R"({"ask":"confirm","alarm":"leak","token":123456,"who":"ann","id":"7"})");
  EXPECT_EQ(typed(Verb::ask, {"start"}, 30),
            R"({"ask":"start","minutes":30.0,"who":"ann","id":"7"})");
  EXPECT_EQ(typed(Verb::ask, {"start", "heater"}, 30),
            R"({"ask":"start","what":"heater","minutes":30.0,"who":"ann","id":"7"})");
  EXPECT_EQ(typed(Verb::ask, {"stop"}), R"({"ask":"stop","who":"ann","id":"7"})");
  EXPECT_EQ(typed(Verb::ask, {"end_bypass", "frost"}),
            R"({"ask":"end_bypass","cause":"frost","who":"ann","id":"7"})");
  EXPECT_EQ(typed(Verb::ask, {"test_lease", "booster"}),
            R"({"ask":"test_lease","actuator":"booster","who":"ann","id":"7"})");
  EXPECT_EQ(typed(Verb::ask, {"test"}), R"({"ask":"test","who":"ann","id":"7"})");
  EXPECT_EQ(typed(Verb::tell, {"measured", "product_tds", "0"}),
            R"({"tell":"measured","instrument":"product_tds","value":0,"who":"ann","id":"7"})");
  EXPECT_EQ(typed(Verb::tell, {"measured", "vat_level", "1,5", "L"}),
            R"({"tell":"measured","instrument":"vat_level","value":"1,5","unit":"L",)"
            R"("who":"ann","id":"7"})");
  EXPECT_EQ(typed(Verb::tell, {"rotated"}), R"({"tell":"rotated","who":"ann","id":"7"})");
  EXPECT_EQ(typed(Verb::tell, {"replaced"}), R"({"tell":"replaced","who":"ann","id":"7"})");
  EXPECT_EQ(typed(Verb::tell, {"tested", "floor"}),
            R"({"tell":"tested","instrument":"floor","who":"ann","id":"7"})");
  EXPECT_EQ(typed(Verb::tell, {"cleaned"}), R"({"tell":"cleaned","who":"ann","id":"7"})");
  EXPECT_EQ(typed(Verb::tell, {"stocked", "salt", "20"}),
            R"({"tell":"stocked","supply":"salt","value":20,"who":"ann","id":"7"})");
}

TEST(Typed, SaysHowItIsTyped) {
  EXPECT_THAT(typed(Verb::ask, {"reset"}), HasSubstr("tidewright ask reset ALARM --who NAME\n"));
  EXPECT_THAT(typed(Verb::ask, {"reset", "leak", "now"}), HasSubstr("It is typed like this:"));
  EXPECT_THAT(typed(Verb::ask, {"stop", "heater", "now"}),
              HasSubstr("ask stop [WHAT] [--minutes MINUTES] --who"));
  EXPECT_THAT(typed(Verb::ask, {"reset", "leak"}, 5), HasSubstr("It is typed like this:"));
  EXPECT_THAT(typed(Verb::ask, {"stop"}, {}, 5), HasSubstr("It is typed like this:"));
  EXPECT_THAT(typed(Verb::tell, {"measured", "product_tds"}),
              HasSubstr("tell measured INSTRUMENT VALUE [UNIT] --who NAME"));
  EXPECT_THAT(typed(Verb::ask, {"aknowledge", "leak"}),
              HasSubstr("\"aknowledge\" is not known. Did you mean \"acknowledge\"?"));
  EXPECT_THAT(typed(Verb::tell, {}), HasSubstr("Nothing was asked for. It can be:\n"));
}

TEST(Typed, ABypassNeedsItsReason) {
  Typed typed{Verb::ask, {"bypass", "frost"}, "ann", 60};
  typed.why = "the probe lies on the floor";
  EXPECT_EQ(std::get<std::string>(as_request(typed, "7")),
            R"({"ask":"bypass","cause":"frost","minutes":60.0,)"
            R"("why":"the probe lies on the floor","who":"ann","id":"7"})");
  typed.why.clear();
  EXPECT_THAT(std::get<Usage>(as_request(typed, "7")).problem,
              HasSubstr("ask bypass CAUSE [--minutes MINUTES] --why TEXT --who NAME\n"));
}

TEST(Typed, ConfirmsWhatWasBypassed) {
  EXPECT_EQ(confirmation({Verb::ask, {"bypass", "frost"}, "ann"}, 654'321, "8"),
            R"({"ask":"confirm_bypass","cause":"frost","token":654321,"who":"ann","id":"8"})");
}

TEST(Typed, ConfirmsWhatWasReset) {
  EXPECT_EQ(confirmation({Verb::ask, {"reset", "leak"}, "ann"}, 654'321, "8"),
            R"({"ask":"confirm","alarm":"leak","token":654321,"who":"ann","id":"8"})");
}

}  // namespace
}  // namespace tidewright::commands
