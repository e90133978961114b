// Every alarm's phone text, as it comes about in the largest room, printed. One who knows only the
// text can say what happened, what the daemon did, what to do, and by when.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include "core/report/phrases.hpp"
#include "core/report/report.hpp"
#include "core/rules/catalogue.hpp"
#include "daemon/commands/plight.hpp"
#include "tests/support/rooms.hpp"

namespace tidewright {
namespace {

class PhoneText : public testing::TestWithParam<const rules::Rule*> {};

TEST_P(PhoneText, TellsAllOfIt) {
  const rules::Rule& rule = *GetParam();
  room::Room room = support::full_room();
  room.instruments[support::floor].where = "the floor by the drain";
  room.purifier->water_stops_with = room::WaterStopsWith::valve;
  const auto plight = commands::lead_into(room, rule.id);
  ASSERT_TRUE(plight.has_value());
  const Announcement* announced = nullptr;
  for (const Effect& effect : plight->effects) {
    const auto* each = std::get_if<Announcement>(&effect);
    if (each && each->alarm == rule.id && each->event == Announced::raised) announced = each;
  }
  ASSERT_NE(announced, nullptr);
  const report::Message message = report::message(room, plight->after, *announced);
  fmt::print("{} [{}]\n  {}\n  {}\n", rule.name, message.priority, message.title, message.text);
  const auto says = [&](const std::string& what) {
    return message.text.find(what) != std::string::npos;
  };
  EXPECT_TRUE(says(report::sentence(report::words(room, announced->why)))) << "what happened";
  // Two rules have several causes or depend on the household's choice (report/message).
  const bool told_otherwise = rule.id == room::RuleId::resin_breakthrough;
  EXPECT_TRUE(told_otherwise || says(report::sentence(std::string(rule.record.automatic))))
      << "what the daemon did";
  EXPECT_TRUE(told_otherwise || says(report::sentence(std::string(rule.record.action))))
      << "what to do";
  EXPECT_TRUE(says("Time to act: ")) << "by when";
  const bool today = rule.respond_within < std::chrono::hours{24};
  EXPECT_EQ(says(", until "), today) << "what is due today names the hour";
  EXPECT_LT(message.text.size(), 700u) << "a phone shows no more at once";
}

INSTANTIATE_TEST_SUITE_P(All, PhoneText, testing::ValuesIn(rules::catalogue),
                         [](const auto& param) { return std::string(param.param->name); });

}  // namespace
}  // namespace tidewright
