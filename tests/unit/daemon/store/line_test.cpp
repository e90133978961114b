#include "daemon/store/line.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "daemon/store/checksum.hpp"
#include "tests/support/rooms.hpp"

namespace tidewright::store {
namespace {

using support::full_room;

const Instant noon{Duration{1'760'000'000'123}};

std::vector<Event> one_of_each() {
  return {
      {.at = noon, .what = Tick{}},
      {.at = noon,
       .what =
           Reading{.instrument = 1, .value = 1.0 / 3, .arrival = Arrival::dated, .taken = noon}},
      {.at = noon, .what = Refusal{.instrument = 2}},
      {.at = noon, .what = Availability{.instrument = 5, .online = true}},
      {.at = noon, .what = Link{.up = true}},
      {.at = noon, .what = Delivery{.actuator = 1, .on = true, .code = 135}},
      {.at = noon, .what = Started{.clean = true, .away = Duration{86'400'000}}},
      {.at = noon, .what = ClockSet{{.ahead = Duration{-5}, .zone = std::chrono::minutes{120}}}},
      {.at = noon, .what = Recorded{.ok = false}},
      {.at = noon, .what = Stopping{}},
      {.at = noon,
       .what = Ask{.kind = AskKind::confirm,
                   .ticket = 7,
                   .alarm = room::RuleId::vat_low,
                   .cause = room::CauseId::frost,
                   .occurrence = 3,
                   .lasting = Duration{60'000},
                   .token = 4'294'967'295,
                   .who = Name{"ann of the attic = 100 %"},
                   .why = Remark{"resin = on its way"}}},
      {.at = noon,
       .what = Tell{.kind = TellKind::measured,
                    .ticket = 8,
                    .instrument = no_subject,
                    .value = -1e-9,
                    .who = Name{"\xC3\xA9\n"},
                    .supply = 0}},
  };
}

// The published check value of this CRC: the catalogue of parametrised CRC algorithms gives
// 0xCBF43926 for the nine digits (CRC-32/ISO-HDLC; from memory).
static_assert(checksum("123456789") == 0xCBF43926U);

TEST(LineTest, ReadsAsTheDocumentSays) {
  const Event wet{.at = noon, .what = Reading{.instrument = support::floor, .value = 1}};
  const std::string body =
      "1042 1760000000123 reading instrument=floor value=1 arrival=live taken=0 raw=wet";
  EXPECT_EQ(print(full_room(), 1042, wet, "wet"), fmt::format("1 {:08x} {}", checksum(body), body));
}

TEST(LineTest, EveryEventComesBack) {
  const auto room = full_room();
  const auto events = one_of_each();
  ASSERT_EQ(events.size(), std::variant_size_v<decltype(Event::what)>);
  for (const Event& event : events) {
    const std::string text = print(room, 9, event, "raw \t\"payload\" %\xFF");
    Line line;
    ASSERT_EQ(parse(text, room, line), nullptr) << text;
    EXPECT_EQ(line.sequence, 9U);
    EXPECT_EQ(line.raw, "raw \t\"payload\" %\xFF");
    EXPECT_EQ(std::get<Event>(line.what).what.index(), event.what.index());
    EXPECT_EQ(print(room, 9, std::get<Event>(line.what), line.raw), text);
    EXPECT_EQ(text.find('\n'), std::string::npos);
  }
}

Trouble trouble_of(const std::string& body, Line& line) {
  return parse(fmt::format("1 {:08x} {}", checksum(body), body), full_room(), line);
}

TEST(LineTest, AWordThatCameLaterMayBeAbsent) {
  Line line;
  ASSERT_EQ(trouble_of("1 1760000000123 started clean=0 away=5", line), nullptr);
  EXPECT_TRUE(std::get<Started>(std::get<Event>(line.what).what).readable);
  ASSERT_EQ(trouble_of("1 1760000000123 started clean=0 away=5 readable=0", line), nullptr);
  EXPECT_FALSE(std::get<Started>(std::get<Event>(line.what).what).readable);
  EXPECT_NE(trouble_of("1 1760000000123 started away=5", line), nullptr);
}

TEST(LineTest, NoTimeWithoutEndAndNoNumberWithoutValue) {
  Line line;
  EXPECT_NE(trouble_of("1 9223372036854775807 tick", line), nullptr);
  EXPECT_NE(trouble_of("1 900000000000000 tick", line), nullptr);  // the year 30,489
  EXPECT_NE(trouble_of("1 0 reading instrument=floor value=nan arrival=live taken=0", line),
            nullptr);
  EXPECT_NE(trouble_of("1 0 reading instrument=floor value=inf arrival=live taken=0", line),
            nullptr);
}

TEST(LineTest, ChaptersComeBack) {
  const std::string file = "room = \"waterroom\"\n[vat]\n# 100 %\n";
  Line line;
  ASSERT_EQ(parse(print(5, noon, HouseholdText{file}), {}, line), nullptr);
  EXPECT_EQ(std::get<HouseholdText>(line.what).text, file);
  ASSERT_EQ(parse(print(5, noon, StateText{.text = file, .fresh = true}), {}, line), nullptr);
  EXPECT_EQ(std::get<StateText>(line.what).text, file);
  EXPECT_TRUE(std::get<StateText>(line.what).fresh);
  ASSERT_EQ(parse(print(5, noon, StateText{.text = "", .fresh = false}), {}, line), nullptr);
  EXPECT_FALSE(std::get<StateText>(line.what).fresh);
}

TEST(LineTest, NoFlippedBitAndNoCutPasses) {
  const auto room = full_room();
  for (const Event& event : one_of_each()) {
    const std::string text = print(room, 9, event, "wet");
    Line line;
    for (std::size_t i = 0; i < text.size(); ++i) {
      EXPECT_NE(parse(text.substr(0, i), room, line), nullptr);
      for (unsigned bit = 0; bit < 8; ++bit) {
        std::string flipped = text;
        flipped[i] = static_cast<char>(static_cast<unsigned char>(flipped[i]) ^ (1U << bit));
        EXPECT_NE(parse(flipped, room, line), nullptr) << flipped;
      }
    }
  }
}

std::string with_checksum(const std::string& body) {
  return fmt::format("1 {:08x} {}", checksum(body), body);
}

TEST(LineTest, SaysWhatIsWrong) {
  const auto room = full_room();
  Line line;
  const auto trouble = [&](const std::string& body) {
    const Trouble said = parse(with_checksum(body), room, line);
    return std::string{said == nullptr ? "nothing" : said};
  };
  EXPECT_EQ(trouble("1 2 tick"), "nothing");
  EXPECT_EQ(trouble("1 2 tock"), "a kind of line that this version does not know");
  EXPECT_EQ(trouble("1 2 link"), "a value that cannot be read");
  EXPECT_EQ(trouble("1 2 link up=yes"), "a value that cannot be read");
  EXPECT_EQ(trouble("1 2 link up=1 up=1"), "a word that stands twice");
  EXPECT_EQ(trouble("1 2 link up=1 down=1"), "a word too much");
  EXPECT_EQ(trouble("1 2 refusal instrument=cellar"),
            "a thing that the household's file does not name");
  EXPECT_EQ(trouble("1 2 refusal instrument=#77"),
            "a thing that the household's file does not name");
  EXPECT_EQ(trouble("1 2 refusal instrument=-"), "a thing that the household's file does not name");
  EXPECT_EQ(trouble("one 2 tick"), "a sequence number that cannot be read");
  EXPECT_STREQ(parse("2 00000000 1 2 tick", room, line), "written by a newer tidewright");
  EXPECT_STREQ(parse("hello", room, line), "no line of a journal");
}

}  // namespace
}  // namespace tidewright::store
