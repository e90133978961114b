// docs/hub.md says what is so.
#include <fnmatch.h>
#include <gtest/gtest.h>

#include <fstream>
#include <regex>
#include <sstream>

#include "daemon/hub/offer.hpp"
#include "daemon/hub/request.hpp"
#include "tests/unit/daemon/hub/offered.hpp"

namespace tidewright::hub {
namespace {

using support::Offered;

std::string document() {
  std::ostringstream text;
  text << std::ifstream(TIDEWRIGHT_SOURCE_DIR "/docs/hub.md").rdbuf();
  return text.str();
}

// Of the first column of the table "What the hub gets".
std::vector<std::string> patterns() {
  std::istringstream lines(document());
  std::vector<std::string> found;
  bool in_table = false;
  for (std::string line; std::getline(lines, line);) {
    if (line.starts_with("## ")) in_table = line == "## What the hub gets";
    if (!in_table || !line.starts_with("| `")) continue;
    const std::string cell = line.substr(0, line.find('|', 1));
    static const std::regex key("`([^`]+)`");
    for (std::sregex_iterator each(cell.begin(), cell.end(), key), end; each != end; ++each) {
      found.push_back((*each)[1]);
    }
  }
  return found;
}

bool fits(const std::string& pattern, const std::string& key) {
  return fnmatch(pattern.c_str(), key.c_str(), 0) == 0;
}

TEST(HubDocument, ItsTableListsWhatIsOfferedAndNothingElse) {
  std::set<std::string> keys;
  for (const std::string& name : support::config_names()) {
    const Offered offered(support::read_config(name));
    const report::Report report = offered.report();
    for (const Offer& offer : offered.offers(report)) keys.insert(offer.key);
  }
  const auto listed = patterns();
  ASSERT_GT(listed.size(), 10u);
  for (const std::string& key : keys) {
    EXPECT_TRUE(std::any_of(listed.begin(), listed.end(),
                            [&](const std::string& pattern) { return fits(pattern, key); }))
        << key << " is not in docs/hub.md";
  }
  for (const std::string& pattern : listed) {
    EXPECT_TRUE(std::any_of(keys.begin(), keys.end(),
                            [&](const std::string& key) { return fits(pattern, key); }))
        << pattern << " is offered nowhere";
  }
}

// The automation's payload, as the hub fills it in for `tidewright|leak|12`.
TEST(HubDocument, ItsAutomationAcknowledgesThatOccurrence) {
  const std::string text = document();
  const std::size_t begin = text.find("payload: >-") + 11;
  std::string payload = text.substr(begin, text.find("```", begin) - begin);
  payload = std::regex_replace(payload, std::regex(R"(\{\{[^}]*\[1\] \}\})"), "leak");
  payload = std::regex_replace(payload, std::regex(R"(\{\{[^}]*\[2\] \}\})"), "12");
  const auto household = support::read_config("minimal");
  const Request request = read_request(Verb::ask, payload, household);
  ASSERT_TRUE(std::holds_alternative<Ask>(request.content))
      << payload << std::get<std::string>(request.content);
  const Ask& ask = std::get<Ask>(request.content);
  EXPECT_EQ(ask.kind, AskKind::acknowledge);
  EXPECT_EQ(ask.alarm, room::RuleId::leak);
  EXPECT_EQ(ask.occurrence, 12u);
}

TEST(HubDocument, ItsAutomationListensToTheEntityThatIsOffered) {
  const std::string golden = TIDEWRIGHT_SOURCE_DIR "/tests/golden/discovery/minimal.json";
  std::ostringstream minimal;
  minimal << std::ifstream(golden).rdbuf();
  EXPECT_NE(minimal.str().find("\"event.waterroom_announcement\""), std::string::npos);
  EXPECT_NE(document().find("entity_id: event.waterroom_announcement"), std::string::npos);
}

}  // namespace
}  // namespace tidewright::hub
