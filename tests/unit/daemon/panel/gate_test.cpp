#include "daemon/panel/gate.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "tests/support/process.hpp"

namespace tidewright::panel {
namespace {

using namespace std::chrono_literals;
using ::testing::HasSubstr;
using ::testing::Not;

const std::string token = "an invented token of the basement";
const Gate::Steady::time_point morning{1h};

class PanelGate : public ::testing::Test {
 protected:
  auto tries(const std::string& with, Gate::Steady::time_point now = morning,
             const std::string& from = "192.0.2.7") {
    return gate.enter(with, from, "ann", now);
  }
  std::string session(Gate::Steady::time_point now = morning) {
    return std::get<std::string>(tries(token, now));
  }
  bool is(Gate::Refusal refusal, const std::variant<std::string, Gate::Refusal>& entry) const {
    const auto* found = std::get_if<Gate::Refusal>(&entry);
    return found != nullptr && *found == refusal;
  }

  Gate gate{token};
};

TEST_F(PanelGate, LetsInWhoGivesTheToken) {
  const std::string ours = session();
  EXPECT_EQ(ours.size(), 32U);
  const auto visitor = gate.visitor(ours, morning);
  ASSERT_TRUE(visitor);
  EXPECT_EQ(visitor->who, "ann");
  EXPECT_EQ(visitor->form.size(), 32U);
  EXPECT_NE(visitor->form, ours);
  EXPECT_FALSE(visitor->last);
  for (const std::string& wrong :
       {token + "x", token.substr(1), std::string("AN") + token.substr(2)}) {
    EXPECT_TRUE(is(Gate::Refusal::wrong, tries(wrong, morning, wrong))) << wrong;
  }
  EXPECT_FALSE(gate.visitor("", morning));
  EXPECT_FALSE(gate.visitor(ours.substr(1), morning));
  EXPECT_FALSE(gate.visitor(visitor->form, morning));
}

TEST_F(PanelGate, GivesEachSessionSecretsOfItsOwn) {
  std::set<std::string> all;
  for (std::size_t i = 0; i < Gate::sessions_most; ++i) {
    all.insert(session());
  }
  for (const std::string& one : std::set<std::string>(all)) {
    all.insert(gate.visitor(one, morning)->form);
  }
  EXPECT_EQ(all.size(), 2 * Gate::sessions_most);
}

TEST_F(PanelGate, WithoutATokenNobodyComesIn) {
  Gate shut{""};
  EXPECT_FALSE(shut.exists());
  EXPECT_TRUE(is(Gate::Refusal::wrong, shut.enter("", "192.0.2.7", "ann", morning)));
}

TEST_F(PanelGate, MakesWhoGuessesWaitAndNobodyElse) {
  for (std::size_t i = 0; i < Gate::wrong_most; ++i) {
    EXPECT_TRUE(is(Gate::Refusal::wrong, tries("guess")));
  }
  EXPECT_TRUE(is(Gate::Refusal::too_often, tries(token))) << "nor is the right one tried any more";
  EXPECT_EQ(std::get<std::string>(tries(token, morning, "192.0.2.8")).size(), 32U);
  EXPECT_TRUE(is(Gate::Refusal::too_often, tries(token, morning + 59s)));
  EXPECT_EQ(std::get<std::string>(tries(token, morning + 1min)).size(), 32U);
}

TEST_F(PanelGate, MakesAllWaitWhenManyAddressesGuess) {
  for (std::size_t i = 0; i < Gate::wrong_most_all; ++i) {
    EXPECT_TRUE(is(Gate::Refusal::wrong, tries("guess", morning, std::to_string(i))));
  }
  EXPECT_TRUE(is(Gate::Refusal::too_often, tries(token, morning, "192.0.2.9")));
  EXPECT_EQ(std::get<std::string>(tries(token, morning + 1min, "192.0.2.9")).size(), 32U);
}

TEST_F(PanelGate, ForgetsWhoLeavesWhoseTimeIsOverAndTheOldestOfTooMany) {
  const std::string first = session();
  const std::string second = session();
  gate.leave(second);
  EXPECT_FALSE(gate.visitor(second, morning));
  EXPECT_TRUE(gate.visitor(first, morning + Gate::session_lasts - 1s));
  EXPECT_FALSE(gate.visitor(first, morning + Gate::session_lasts));
  for (std::size_t i = 0; i < Gate::sessions_most; ++i) session();
  EXPECT_FALSE(gate.visitor(first, morning));
}

TEST_F(PanelGate, KeepsWhatWasAskedLastInThatSessionAlone) {
  const std::string ours = session(), other = session();
  gate.keep(ours, {.at = morning, .path = "rotated", .about = "x", .outcome = {}});
  EXPECT_EQ(gate.visitor(ours, morning)->last->path, "rotated");
  EXPECT_FALSE(gate.visitor(other, morning)->last);
}

TEST(PanelSecrets, AreTheSameInEveryByteOrNotAtAll) {
  EXPECT_TRUE(same_secret("abc", "abc"));
  EXPECT_FALSE(same_secret("abc", "abd"));
  EXPECT_FALSE(same_secret("abc", "abcd"));
  EXPECT_FALSE(same_secret("", "abc"));
}

class PanelTokenFile : public ::testing::Test {
 protected:
  TokenFile read(const std::string& content) const {
    support::write_file(path(), content);
    return read_token(path());
  }
  std::string path() const { return directory_.path() + "/token"; }

 private:
  support::TemporaryDirectory directory_;
};

TEST_F(PanelTokenFile, HoldsTheTokenInItsFirstLine) {
  EXPECT_EQ(read("  " + token + "\r\nanother line\n").token, token);
  EXPECT_EQ(read(token).trouble, "");
  EXPECT_EQ(read_token("").token + read_token("").trouble, "");
}

TEST_F(PanelTokenFile, SaysWhatIsWrongWithItAndNeverWhatIsInIt) {
  const TokenFile shorter = read("too short");
  EXPECT_EQ(shorter.token, "");
  EXPECT_THAT(shorter.trouble, HasSubstr(path() + " has 9 characters; expected 16 to 128"));
  EXPECT_THAT(shorter.trouble, Not(HasSubstr("too short")));
  EXPECT_THAT(read(std::string(129, 'x')).trouble, HasSubstr("has 129 characters"));
  EXPECT_EQ(read(std::string(16, 'x')).token.size(), 16U);
  EXPECT_EQ(read(std::string(128, 'x')).token.size(), 128U);
  EXPECT_THAT(read("").trouble, HasSubstr("cannot be read from " + path()));
  EXPECT_THAT(read_token(path() + "/none").trouble, HasSubstr("The panel can only be looked at."));
}

}  // namespace
}  // namespace tidewright::panel
