// What the daemon and the courier write to each other comes back as it was; anything else is
// nothing.
#include "daemon/post/orders.hpp"

#include <gtest/gtest.h>

namespace tidewright::post {
namespace {

TEST(Orders, ComeBackAsTheyWere) {
  Orders orders;
  orders.webhook = config::Webhook{"https://phone.home/a", "/secret", "/ca.pem"};
  orders.mail = config::Mail{"smtps://mail.home",
                             "room",
                             "/password",
                             "a@home.example",
                             {"b@home.example", "c@home.example"},
                             ""};
  orders.letters = {{"ab-1", Way::webhook,
                     "{\"text\":\"25 \xC2\xB0"
                     "C\"}"},
                    {"ab-1", Way::mail, "{}"}};
  const auto back = orders_of(to_text(orders));
  ASSERT_TRUE(back);
  EXPECT_EQ(back->letters, orders.letters);
  EXPECT_EQ(back->webhook->url, "https://phone.home/a");
  EXPECT_EQ(back->webhook->secret_file, "/secret");
  EXPECT_EQ(back->webhook->ca_file, "/ca.pem");
  EXPECT_EQ(back->mail->server, "smtps://mail.home");
  EXPECT_EQ(back->mail->username, "room");
  EXPECT_EQ(back->mail->password_file, "/password");
  EXPECT_EQ(back->mail->from, "a@home.example");
  EXPECT_EQ(back->mail->to, orders.mail->to);
  EXPECT_EQ(back->mail->ca_file, "");
}

TEST(Orders, AWayThatIsNotWantedIsNotThere) {
  const auto back = orders_of(to_text(Orders{}));
  ASSERT_TRUE(back);
  EXPECT_FALSE(back->webhook);
  EXPECT_FALSE(back->mail);
  EXPECT_TRUE(back->letters.empty());
}

TEST(Orders, AnythingElseIsNone) {
  for (const char* text :
       {"", "{", "[]", "{}", R"({"letters":[{"notice":1}]})", R"({"letters":[],"webhook":{}})",
        R"({"letters":[{"notice":"a","way":"pigeon","body":""}]})"}) {
    EXPECT_FALSE(orders_of(text)) << text;
  }
}

TEST(Orders, AnOutcomeComesBackAsItWasWhateverAServerSaid) {
  for (const Fate fate : {Fate::delivered, Fate::refused, Fate::failed}) {
    for (const Way way : ways) {
      const Outcome outcome{"ab-7", way, fate, "not\n\"now\""};
      const std::string line = to_text(outcome);
      EXPECT_EQ(line.find('\n'), line.size() - 1) << "one line";
      EXPECT_EQ(outcome_of(line), outcome);
    }
  }
  EXPECT_TRUE(outcome_of(to_text({"ab-7", Way::mail, Fate::failed, "\xFF\xFE"})));
  EXPECT_FALSE(outcome_of("550 no"));
  EXPECT_FALSE(outcome_of(R"({"notice":"ab-7"})"));
}

}  // namespace
}  // namespace tidewright::post
