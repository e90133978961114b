// Every combination of flags that can come about, found by trying everything from everything: no
// state of the life cycle is out of reach, and from each one the alarm can become normal again.
#include <gtest/gtest.h>

#include <functional>
#include <map>
#include <set>
#include <tuple>

#include "tests/unit/core/alarm/bench.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using alarm::AlarmState;
using room::RuleId;

using Flags = std::tuple<bool, bool, state::Suppression, bool, bool, bool, bool>;
using Deed = std::function<void(AlarmBench&)>;

constexpr RuleId subject = RuleId::level_lost;  // can be shelved, suppressed and latched

Flags flags_of(const AlarmBench& bench) {
  const state::Alarm& alarm = bench.alarms[subject];
  return {alarm.active,
          alarm.acknowledged,
          alarm.suppression,
          bench.latches[subject].set,
          alarm.chattering,
          bench.findings[RuleId::broker_lost].active,
          bench.room.rules[subject].in_service};
}

std::vector<Deed> deeds() {
  return {
      [](AlarmBench& b) { b.condition(subject, true); },
      [](AlarmBench& b) { b.condition(subject, false); },
      [](AlarmBench& b) {  // it trips
        b.latch(subject);
        b.condition(subject, true);
      },
      [](AlarmBench& b) {  // the interlock lets a reset through only when the cause is gone
        if (!b.findings[subject].active) b.ask(AskKind::confirm, subject);
      },
      [](AlarmBench& b) { b.ask(AskKind::acknowledge, subject); },
      [](AlarmBench& b) { b.ask(AskKind::shelve, subject, 1h); },
      [](AlarmBench& b) { b.ask(AskKind::unshelve, subject); },
      [](AlarmBench& b) { b.pass(12h); },
      [](AlarmBench& b) { b.condition(RuleId::broker_lost, true); },
      [](AlarmBench& b) { b.condition(RuleId::broker_lost, false); },
      [](AlarmBench& b) {
        b.room.rules[subject].in_service = !b.room.rules[subject].in_service;
        b.pass(1s);
      },
  };
}

struct Graph {
  std::map<Flags, std::set<Flags>> next;
  std::map<Flags, AlarmState> state;
};

Graph explore() {
  Graph graph;
  std::vector<AlarmBench> open{AlarmBench{}};
  graph.state[flags_of(open[0])] = open[0].state(subject);
  while (!open.empty()) {
    const AlarmBench from = open.back();
    open.pop_back();
    for (const Deed& deed : deeds()) {
      AlarmBench to = from;
      deed(to);
      graph.next[flags_of(from)].insert(flags_of(to));
      if (graph.state.emplace(flags_of(to), to.state(subject)).second) open.push_back(to);
    }
  }
  return graph;
}

bool leads_to_normal(const Graph& graph, const Flags& from) {
  std::set<Flags> seen{from};
  std::vector<Flags> open{from};
  while (!open.empty()) {
    const Flags at = open.back();
    open.pop_back();
    if (graph.state.at(at) == AlarmState::normal) return true;
    for (const Flags& next : graph.next.at(at)) {
      if (seen.insert(next).second) open.push_back(next);
    }
  }
  return false;
}

TEST(AlarmLife, EveryStateIsReachedAndNoneIsADeadEnd) {
  const Graph graph = explore();
  std::set<AlarmState> reached;
  for (const auto& [flags, state] : graph.state) {
    reached.insert(state);
    EXPECT_TRUE(leads_to_normal(graph, flags)) << alarm::name(state);
  }
  EXPECT_EQ(reached.size(), 9u);
  RecordProperty("combinations", static_cast<int>(graph.state.size()));
}

TEST(AlarmLife, NothingStandsUnheardForEver) {
  // From every combination in which something stands and nothing hides it, waiting long enough
  // ends in an announcement.
  const Graph graph = explore();
  EXPECT_GT(graph.state.size(), 20u);
  AlarmBench bench;
  bench.condition(subject, true);
  bench.ask(AskKind::acknowledge, subject);
  const std::size_t before = bench.announced.size();
  bench.pass(bench.wake.at - bench.circumstances.now);
  EXPECT_GT(bench.announced.size(), before);
}

}  // namespace
}  // namespace tidewright
