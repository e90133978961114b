// Same events in, same decisions and same state out: twice in one build, and by the digest that
// tests/long.sh compares between debug and release.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <optional>
#include <string>
#include <vector>

#include "daemon/store/checksum.hpp"
#include "daemon/store/relive.hpp"
#include "daemon/store/state_text.hpp"
#include "tests/support/eventful_life.hpp"
#include "tests/support/rooms.hpp"
#include "tests/support/seed.hpp"

namespace tidewright::store {
namespace {

constexpr std::size_t events = 100'000;

struct Outcome {
  std::uint32_t decisions = 0;  // a checksum over all of them
  std::uint32_t states = 0;     // over the state after every 500th event
  std::string last_state;
  std::size_t commands = 0, announcements = 0;
};

Outcome relive(const room::Room& room, const std::vector<std::string>& lines) {
  Outcome outcome;
  std::uint64_t seen = 0;
  const auto add = [](std::uint32_t& sum, const std::string& text) {
    sum = checksum(fmt::format("{:08x}{}", sum, text));
  };
  Relive relive{room,
                [&](const Moment& moment) {
                  add(outcome.decisions, support::decided(moment.state, moment.effects));
                  if (++seen % 500 == 0) add(outcome.states, to_text(room, moment.state));
                  for (const Effect& effect : moment.effects) {
                    outcome.commands += std::holds_alternative<Command>(effect) ? 1 : 0;
                    outcome.announcements += std::holds_alternative<Announcement>(effect) ? 1 : 0;
                  }
                },
                [](const std::string& trouble) { ADD_FAILURE() << trouble; }};
  for (const std::string& line : lines) relive.line(line);
  EXPECT_EQ(relive.result().events, lines.size() - 1);
  outcome.last_state = to_text(room, relive.state());
  return outcome;
}

// In the long tier the first build leaves its journal and its digest in this directory, and the
// next one lives by that journal.
std::optional<std::filesystem::path> shared_between_builds() {
  const char* directory = std::getenv("TIDEWRIGHT_DETERMINISM");
  if (directory == nullptr) return std::nullopt;
  return directory;
}

std::vector<std::string> journal(const room::Room& room) {
  const auto shared = shared_between_builds();
  std::vector<std::string> lines;
  if (shared) {
    std::ifstream in{*shared / "journal"};
    for (std::string line; std::getline(in, line);) lines.push_back(line);
  }
  if (!lines.empty()) return lines;
  const std::uint64_t seed = support::seeds({2}).front();
  support::print_seed(seed);
  lines = support::eventful_life(room, seed, events);
  if (shared) {
    std::ofstream out{*shared / "journal"};
    for (const std::string& line : lines) out << line << '\n';
  }
  return lines;
}

TEST(DeterminismTest, AJournalIsRelivedToTheSameDecisionsAndTheSameState) {
  const auto room = support::full_room();
  const auto lines = journal(room);
  const Outcome first = relive(room, lines);
  const Outcome second = relive(room, lines);
  EXPECT_EQ(first.decisions, second.decisions);
  EXPECT_EQ(first.states, second.states);
  EXPECT_EQ(first.last_state, second.last_state);
  // A life in which nothing is decided would prove nothing.
  EXPECT_GT(first.commands, 1000U);
  EXPECT_GT(first.announcements, 100U);

  const std::string digest = fmt::format("{:08x}", first.decisions);
  fmt::print("{} events, {} commands, {} announcements, decisions {}\n", lines.size() - 1,
             first.commands, first.announcements, digest);
  const auto shared = shared_between_builds();
  if (!shared) return;
  std::string others;
  std::getline(std::ifstream{*shared / "digest"}, others);
  if (others.empty()) std::ofstream{*shared / "digest"} << digest << '\n';
  EXPECT_EQ(others.empty() ? digest : others, digest) << "another build decided otherwise";
}

}  // namespace
}  // namespace tidewright::store
