// What becomes of announcements in bad nights: every one that people may know of arrives on each
// way, whenever the daemon is killed between any two of the steps in which it is told; under one
// id, so that a receiver can drop a repeat; and once where nothing is killed.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <tuple>

#include "core/nights/draw.hpp"
#include "core/nights/run.hpp"
#include "core/rehearsal/chance.hpp"
#include "core/rules/catalogue.hpp"
#include "daemon/alerts/compose.hpp"
#include "daemon/alerts/outbox.hpp"
#include "tests/support/households.hpp"

namespace tidewright {
namespace {

using alerts::Outbox;
using nlohmann::json;
using post::Way;

// Alarm, occurrence, event: what an announcement is to people.
using Told = std::tuple<std::string, std::uint32_t, std::string>;

Told told(const Announcement& it) {
  static constexpr std::array events{"raised", "reminder", "cleared", "test", "summary", "digest"};
  const std::string event = events[static_cast<std::size_t>(it.event)];
  const bool of_an_alarm = it.event != Announced::test && it.event != Announced::digest;
  return {of_an_alarm ? std::string(rules::rule(it.alarm).name) : event, it.occurrence, event};
}

// Lives as daemon/alerts does, with a disk and receivers of memory, and is killed in between.
class Teller : public nights::Listener {
 public:
  Teller(const config::Household& household, std::uint64_t seed, double killed)
      : household_(household), chance_(seed), killed_(killed) {}

  void begins(const State& found) override {
    const auto kept = disk_ ? Outbox::of(*disk_) : std::nullopt;
    ASSERT_TRUE(kept || !disk_);
    // Where there was no outbox yet, nothing was announced either.
    outbox_ = Outbox::resumed(kept, fmt::format("run{}", ++runs_), kept ? found.notices.last : 0);
    write();
    tell(found, true);
  }
  void announces(const Announcement& announcement) override { held_.push_back(announcement); }
  void tells(const State& state, bool kept) override {
    for (const Announcement& it : held_) ++known_[told(it)];
    held_.clear();
    tell(state, kept);
  }
  void dies() override { held_.clear(); }

  void expect_all_arrived() const {
    for (const Way way : post::ways) {
      const auto& arrived = arrived_.at(way);
      for (const auto& [what, times] : known_) {
        const auto found = arrived.find(what);
        const std::size_t ids = found == arrived.end() ? 0 : found->second.size();
        EXPECT_GE(ids, times) << std::get<0>(what) << " " << std::get<1>(what) << " "
                              << std::get<2>(what) << " by " << post::name(way);
        if (killed_ == 0) {
          EXPECT_EQ(ids, times);
        }
      }
    }
  }
  std::size_t letters() const { return letters_; }
  std::size_t repeats() const { return repeats_; }
  std::size_t kills() const { return kills_; }
  std::size_t known() const { return known_.size(); }

 private:
  void write() { disk_ = outbox_->to_text(); }
  // Whether the daemon is killed here; then it has begun again, with what the disk holds.
  bool killed(const State& state, bool kept) {
    if (!kept || chance_.uniform() >= killed_) return false;
    ++kills_;
    begins(state);
    return true;
  }

  void tell(const State& state, bool kept) {
    const bool news = outbox_->take(household_, state).news;
    if (news) {
      if (killed(state, kept)) return;
      write();
      if (killed(state, kept)) return;
    }
    for (const Way way : post::ways) {
      for (const post::Letter& letter : outbox_->due(way, never)) {
        arrive(letter);
        if (killed(state, kept)) return;
        outbox_->settle({letter.notice, letter.way, post::Fate::delivered, ""});
        if (killed(state, kept)) return;
        write();
      }
    }
  }

  void arrive(const post::Letter& letter) {
    ++letters_;
    const json body = json::parse(letter.body);
    EXPECT_EQ(body.at("notice"), letter.notice);
    const Told what{body.at("alarm"), body.at("occurrence"), body.at("event")};
    const auto [first, is_new] = by_id_.emplace(std::pair{letter.way, letter.notice}, what);
    if (!is_new) ++repeats_;
    EXPECT_EQ(first->second, what) << "two announcements under the id " << letter.notice;
    arrived_[letter.way][what].insert(letter.notice);
  }

  const config::Household& household_;
  rehearsal::Chance chance_;
  double killed_;
  std::optional<Outbox> outbox_;
  std::optional<std::string> disk_;
  std::vector<Announcement> held_;
  std::map<Told, std::size_t> known_;  // how often people may know of it
  std::map<Way, std::map<Told, std::set<std::string>>> arrived_{{Way::webhook, {}},
                                                                {Way::mail, {}}};
  std::map<std::pair<Way, std::string>, Told> by_id_;
  std::size_t runs_ = 0, letters_ = 0, repeats_ = 0, kills_ = 0;
};

struct Sum {
  std::size_t nights = 0, known = 0, letters = 0, repeats = 0, kills = 0;
};

void live(std::uint64_t seed, const std::vector<support::Household>& homes, double killed,
          Sum& sum) {
  const support::Household& home = homes[seed % homes.size()];
  config::Household household;
  household.room = home.room;
  household.alerts.webhook = config::Webhook{};
  household.alerts.mail = config::Mail{};
  const nights::Night night = nights::draw_incident(home.name, home.room, seed);
  Teller teller(household, seed, killed);
  nights::Run run(home.room, night);
  run.listener = &teller;
  run.live();
  teller.expect_all_arrived();
  ++sum.nights;
  sum.known += teller.known();
  sum.letters += teller.letters();
  sum.repeats += teller.repeats();
  sum.kills += teller.kills();
}

class AlertsInNights : public testing::TestWithParam<int> {};

constexpr std::uint64_t in_a_part = 250;

TEST_P(AlertsInNights, ArriveOnEachWayWhateverIsKilled) {
  const auto homes = support::households();
  Sum calm, killed;
  const auto first = static_cast<std::uint64_t>(GetParam()) * in_a_part;
  for (std::uint64_t seed = first; seed < first + in_a_part; ++seed) {
    live(seed, homes, 0.25, killed);
    if (testing::Test::HasFailure()) FAIL() << "seed " << seed;
    if (seed % 5 != 0) continue;
    live(seed, homes, 0, calm);
    if (testing::Test::HasFailure()) FAIL() << "seed " << seed << ", nothing killed";
  }
  EXPECT_GT(killed.kills, in_a_part) << "too little was tried";
  EXPECT_GT(killed.repeats, 0u);
  fmt::print(
      "{} nights, {} kills: {} announcements, {} letters, {} of them again; "
      "{} nights without: {} announcements, {} letters\n",
      killed.nights, killed.kills, killed.known, killed.letters, killed.repeats, calm.nights,
      calm.known, calm.letters);
}

INSTANTIATE_TEST_SUITE_P(Parts, AlertsInNights, testing::Range(0, 4));

}  // namespace
}  // namespace tidewright
