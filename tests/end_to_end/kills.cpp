// kill -9 at random instants of the real daemon at a real broker, in a room that fills its vat and
// leaks: no announced latch is lost, no total falls, nothing is announced twice, and the journal is
// lived through again to the same state. TIDEWRIGHT_KILLS=500 in the long tier.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "core/rehearsal/chance.hpp"
#include "daemon/store/journal_file.hpp"
#include "daemon/store/line.hpp"
#include "daemon/store/relive.hpp"
#include "daemon/store/state_text.hpp"
#include "tests/support/broker.hpp"
#include "tests/support/daemon_process.hpp"
#include "tests/support/mqtt_client.hpp"
#include "tests/support/seed.hpp"

namespace tidewright::support {
namespace {

using namespace std::chrono_literals;
using Steady = std::chrono::steady_clock;

const std::string topics = "tidewright/waterroom/";
constexpr double pace = 300;  // the room's seconds in one of the world's
constexpr Milliseconds beat = 20ms;
constexpr Milliseconds life_longest = 10s;

// What the household heard: whatever it was told must stay true over every kill.
class Witness {
 public:
  void hear(const Message& message) {
    if (message.topic == topics + "announcement") return hear_announcement(message.payload);
    if (!message.topic.starts_with(topics + "value/")) return;
    const std::string name = message.topic.substr(topics.size() + 6);
    if (name.starts_with("alarm/") && name.ends_with("/latched")) {
      const std::string alarm = name.substr(6, name.size() - 14);
      latched_.erase(alarm);
      if (message.payload == "true") latched_.insert(alarm);
    }
    if (name.ends_with("/occurrence") || name.ends_with("_total") || name.ends_with("_total_l")) {
      never_falls(name, message.payload);
    }
  }
  // What was announced must be shown as latched: soon, for an announcement may overtake the values
  // of the moment before it; a kill cuts that short.
  void ask_for_the_latch() {
    const auto now = Steady::now();
    if (told_ <= reset_ || latched_.contains("leak")) missed_since_ = now;
    EXPECT_LT(now - missed_since_, 5s) << "an announced latch was lost";
  }
  void note_kill() { missed_since_ = Steady::now(); }
  // A person confirms a reset: the latch may go from now on, but not the next one.
  void reset_is_confirmed() { reset_ = told_; }

  const std::set<std::string>& latched() const { return latched_; }
  int latches() const { return latches_; }
  std::size_t raised() const { return raised_.size(); }
  double total(const std::string& name) const {
    const auto found = totals_.find(name);
    return found == totals_.end() ? 0 : found->second;
  }

 private:
  void hear_announcement(const std::string& payload) {
    const auto told = nlohmann::json::parse(payload);
    const auto id = told.at("id").get<std::string>();
    const auto event = told.at("event").get<std::string>();
    const auto occurrence = told.at("occurrence").get<unsigned>();
    if (id == "leak") told_ = std::max(told_, occurrence);
    if (event != "raised" && event != "cleared") return;
    auto& once = event == "raised" ? raised_ : cleared_;
    EXPECT_TRUE(once.emplace(id, occurrence).second)
        << id << " " << occurrence << " was twice told as " << event;
    if (id == "leak" && event == "raised") ++latches_;
  }
  void never_falls(const std::string& name, const std::string& payload) {
    char* end = nullptr;
    const double now = std::strtod(payload.c_str(), &end);
    if (end == payload.c_str()) return;
    double& highest = totals_[name];
    EXPECT_GE(now, highest) << name;
    highest = std::max(highest, now);
  }

  std::set<std::pair<std::string, unsigned>> raised_, cleared_;
  std::map<std::string, double> totals_;
  std::set<std::string> latched_;  // as it is shown
  unsigned told_ = 0, reset_ = 0;  // occurrences of the leak
  Steady::time_point missed_since_ = Steady::now();
  int latches_ = 0;
};

// The room and its person, played by hand: sensors, a plug that obeys, water, a cloth, a reset.
class Room {
 public:
  Room(MqttClient& home, Witness& witness, rehearsal::Chance& chance)
      : home_(home), witness_(witness), chance_(chance) {}

  void live_for_a_beat() {
    const double hours = std::chrono::duration<double>(beat).count() * pace / 3600;
    litres_ += on_ ? 280.0 / 24 * hours : -2 * hours;
    if (wet_beats_ == 0 && chance_.uniform() < 0.002) wet_beats_ = 10;
    if (wet_beats_ > 0) --wet_beats_;
    dry_beats_ = wet_beats_ > 0 ? 0 : dry_beats_ + 1;
    says("leak", wet_beats_ > 0 ? "wet" : "dry");
    says("vat_level", std::to_string(static_cast<int>(litres_ / 2)));
    says("temperature", "20");
    if (++beats_ % 25 == 0 && dry_beats_ > 25) {
      // At this pace a message of 40 ms is 12 s late: a plug may seem to disobey, too.
      for (const std::string& alarm : witness_.latched()) ask("reset", alarm);
    }
    const auto end = Steady::now() + beat;
    while (const auto message = home_.next(std::max(left(end), Milliseconds{0}))) hear(*message);
    witness_.ask_for_the_latch();
  }
  int resets() const { return resets_; }

 private:
  static Milliseconds left(Steady::time_point end) {
    return std::chrono::duration_cast<Milliseconds>(end - Steady::now());
  }
  void says(const std::string& instrument, const std::string& payload) {
    home_.publish("home/waterroom/" + instrument, payload);
  }
  void ask(const std::string& what, const std::string& alarm, const std::string& more = "") {
    home_.publish(topics + "ask",
                  fmt::format(R"({{"ask":"{}","alarm":"{}","who":"ann","id":"{}"{}}})", what, alarm,
                              alarm, more));
  }
  void hear(const Message& message) {
    if (message.topic == "home/waterroom/booster/set") {
      on_ = message.payload == "ON";
      says("booster", message.payload);
    } else if (message.topic == topics + "answer") {
      const auto answer = nlohmann::json::parse(message.payload);
      const unsigned token = answer.value("token", 0U);
      if (token == 0) return;
      const auto alarm = answer.at("id").get<std::string>();
      if (alarm == "leak") witness_.reset_is_confirmed();
      ++resets_;
      ask("confirm", alarm, fmt::format(R"(,"token":{})", token));
      home_.publish(topics + "ask", R"({"ask":"start","who":"ann","id":"start"})");
    } else {
      witness_.hear(message);
    }
  }

  MqttClient& home_;
  Witness& witness_;
  rehearsal::Chance& chance_;
  double litres_ = 70;
  bool on_ = false;
  int beats_ = 0, wet_beats_ = 0, dry_beats_ = 0, resets_ = 0;
};

// How many runs began exactly where the run before had ended.
int expect_replay_equal(const std::string& journal) {
  int equal = 0;
  store::Relive relive{{},
                       [](const store::Moment&) {},
                       [](const std::string& trouble) { ADD_FAILURE() << trouble; }};
  store::JournalFile::for_each_line(journal, [&](const std::string& text) {
    store::Line line;
    store::parse(text, relive.room(), line);
    const auto* begins = std::get_if<store::StateText>(&line.what);
    if (begins != nullptr && begins->fresh && relive.result().events > 0 &&
        line.sequence == relive.sequence()) {
      EXPECT_EQ(store::to_text(relive.room(), relive.state()), begins->text);
      ++equal;
    }
    relive.line(text);
  });
  EXPECT_EQ(relive.result().chapters_agreed, relive.result().chapters);
  EXPECT_EQ(relive.result().missing, 0U);
  EXPECT_GT(relive.result().events, 100U);
  return equal;
}

TEST(Kills, NothingThatWasToldIsLostOrToldTwice) {
  const char* asked = std::getenv("TIDEWRIGHT_KILLS");
  const int kills = asked != nullptr ? std::atoi(asked) : 6;
  const std::uint64_t seed = seeds({static_cast<std::uint64_t>(getpid())}).front();
  print_seed(seed);
  rehearsal::Chance chance{seed};
  const auto began = Steady::now();
  Broker broker;
  MqttClient home(broker.port(), "home");
  home.subscribe("home/waterroom/booster/set");
  home.subscribe("tidewright/#");
  DaemonProcess daemon(source_file("config/minimal.toml"), broker.uri(), {"--pace", "300"});
  Witness witness;
  Room room(home, witness, chance);
  const auto live = [&](Milliseconds lasting) {
    const auto end = Steady::now() + lasting;
    while (Steady::now() < end) room.live_for_a_beat();
  };
  const auto enough = [&] {
    return witness.latches() > 0 && room.resets() > 0 && witness.total("ledger/made_total_l") > 0;
  };
  for (int i = 0; i < kills; ++i) {
    // Short lives, too, in which it does not come as far as the broker.
    const double share = chance.uniform();
    live(Milliseconds{static_cast<int>(share * share * life_longest.count())});
    ASSERT_TRUE(daemon.process().running()) << daemon.log();
    daemon.kill();
    witness.note_kill();
    daemon.start();
    if (::testing::Test::HasFailure()) break;
  }
  live(life_longest);
  // Few kills may leave neither water made nor a leak to tell.
  const auto latest = Steady::now() + 60s;
  while (!enough() && Steady::now() < latest) room.live_for_a_beat();
  EXPECT_EQ(daemon.terminate(5s), 0);
  EXPECT_GT(witness.latches(), 0);
  EXPECT_GT(room.resets(), 0);
  EXPECT_GT(witness.total("ledger/made_total_l"), 0);
  const int equal = expect_replay_equal(daemon.state_directory() + "/journal.db");
  EXPECT_GT(equal, kills / 2);
  const auto took = std::chrono::duration_cast<std::chrono::seconds>(Steady::now() - began);
  fmt::print(
      "{} kills in {} s: {} leaks latched and told, {} alarms told once each, {} resets, {:.1f} L "
      "made, "
      "{} runs began exactly where the one before had ended\n",
      kills, took.count(), witness.latches(), witness.raised(), room.resets(),
      witness.total("ledger/made_total_l"), equal);
}

}  // namespace
}  // namespace tidewright::support
