// The table of the life cycle, written a second time as a reader would, against the real one: every
// sequence of so many events, each state compared after each event.
//
// | event | guard | effect |
// | condition on | not active | active, not acked, a new occurrence |
// | condition off | active | not active |
// | acknowledge | nothing hides it, it is the current occurrence | acked |
// | trip | | latched, active, not acked, a new occurrence |
// | reset | the cause is gone | latch gone, acked |
// | shelve | nothing hides it | shelved for an hour |
// | shelf or suppression ends | | back; acked only if neither active nor latched |
// | re-alarm after 12 h | acked, nothing hides it, active or latched | not acked |
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <set>
#include <string>
#include <vector>

#include "tests/unit/core/alarm/bench.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using alarm::AlarmState;
using room::RuleId;

constexpr RuleId subject = RuleId::level_lost;  // may be shelved, suppressed and latched
constexpr RuleId root = RuleId::broker_lost;    // its consequence is the subject

enum class Deed {
  on,
  off,
  trip,
  reset,
  acknowledge,
  late_button,
  shelve,
  unshelve,
  wait,
  root_on,
  root_off,
  service
};
constexpr int deed_count = 12;

struct Model {
  bool active = false, acked = true, latched = false, shelved = false;
  bool root_stands = false, in_service = true;
  std::uint32_t occurrence = 0;

  bool stands() const { return active || latched; }
  bool hidden() const { return !in_service || shelved || root_stands; }

  void begin() {
    active = true;
    acked = false;
    ++occurrence;
  }
  // What hid it may have ended by this event.
  void shown_again(bool was_hidden) {
    if (was_hidden && !hidden()) acked = !stands();
  }

  void happen(Deed deed) {
    const bool was_hidden = hidden();
    switch (deed) {
      case Deed::on:
        if (!active) begin();
        return;
      case Deed::off:
        active = false;
        return;
      case Deed::trip:
        if (!latched || !active) begin();
        latched = true;
        return;
      case Deed::reset:
        if (active) return;
        latched = false;
        acked = true;
        return;
      case Deed::acknowledge:
        if (!hidden()) acked = true;
        return;
      case Deed::late_button:
        return;
      case Deed::shelve:
        if (!hidden()) shelved = true;
        return;
      case Deed::unshelve:
        if (in_service) shelved = false;
        return shown_again(was_hidden);
      case Deed::wait:
        shelved = false;
        if (was_hidden) return shown_again(was_hidden);
        if (stands()) acked = false;
        return;
      case Deed::root_on:
        root_stands = true;
        return;
      case Deed::root_off:
        root_stands = false;
        return shown_again(was_hidden);
      case Deed::service:
        in_service = !in_service;
        // Out of service takes the place of a shelf.
        if (!in_service) shelved = false;
        return shown_again(was_hidden);
    }
  }

  AlarmState state() const {
    if (!in_service) return AlarmState::out_of_service;
    if (shelved) return AlarmState::shelved;
    if (root_stands) return AlarmState::suppressed;
    if (active) return acked ? AlarmState::acknowledged : AlarmState::unacknowledged;
    if (latched) {
      return acked ? AlarmState::latched_acknowledged : AlarmState::latched_unacknowledged;
    }
    return acked ? AlarmState::normal : AlarmState::returned_unacknowledged;
  }
};

void do_it(Deed deed, AlarmBench& bench) {
  switch (deed) {
    case Deed::on:
    case Deed::off:
      return bench.condition(subject, deed == Deed::on);
    case Deed::trip:
      if (!bench.latches[subject].set) {
        bench.latches[subject] = {true, false, bench.circumstances.now + 1s, {}};
      }
      return bench.condition(subject, true);
    case Deed::reset:
      if (!bench.findings[subject].active) bench.ask(AskKind::confirm, subject);
      return;
    case Deed::acknowledge:
      bench.ask(AskKind::acknowledge, subject);
      return;
    case Deed::late_button:
      bench.ask(AskKind::acknowledge, subject, {}, bench.alarms[subject].occurrence + 1);
      return;
    case Deed::shelve:
      bench.ask(AskKind::shelve, subject, 1h);
      return;
    case Deed::unshelve:
      bench.ask(AskKind::unshelve, subject);
      return;
    case Deed::wait:
      return bench.pass(12h);
    case Deed::root_on:
    case Deed::root_off:
      return bench.condition(root, deed == Deed::root_on);
    case Deed::service:
      bench.room.rules[subject].in_service = !bench.room.rules[subject].in_service;
      return bench.pass(1s);
  }
}

struct Walk {
  std::set<AlarmState> reached;
  std::vector<int> path;
  long steps = 0;

  // Returns false after the first difference.
  bool on_from(const AlarmBench& bench, const Model& model, int depth) {
    reached.insert(model.state());
    if (depth == 0) return true;
    for (int number = 0; number < deed_count; ++number) {
      AlarmBench next = bench;
      Model expected = model;
      next.announced.clear();
      path.push_back(number);
      do_it(static_cast<Deed>(number), next);
      expected.happen(static_cast<Deed>(number));
      ++steps;
      const bool same = next.state(subject) == expected.state() &&
                        next.alarms[subject].occurrence == expected.occurrence;
      if (!same) {
        std::string way;
        for (const int each : path) way += fmt::format(" {}", each);
        ADD_FAILURE() << "after the deeds" << way << " it is " << alarm::name(next.state(subject))
                      << ", by the table " << alarm::name(expected.state());
        return false;
      }
      if (!on_from(next, expected, depth - 1)) return false;
      path.pop_back();
    }
    return true;
  }
};

TEST(AlarmTable, EverySequenceOfFourEventsGoesAsTheTableSays) {
  Walk walk;
  walk.on_from(AlarmBench{}, Model{}, 4);
  EXPECT_EQ(walk.reached.size(), 9u) << "every state of the table";
  fmt::print("{} events compared\n", walk.steps);
}

// From whatever four events may lead to, four more (the cause goes, what hides it ends, a person
// resets and acknowledges) always lead back to normal.
struct WayBack {
  long ends = 0;
  void on_from(const AlarmBench& bench, int depth) {
    AlarmBench back = bench;
    back.room.rules[subject].in_service = true;
    for (const Deed deed :
         {Deed::off, Deed::root_off, Deed::unshelve, Deed::reset, Deed::acknowledge}) {
      do_it(deed, back);
    }
    ++ends;
    EXPECT_EQ(back.state(subject), AlarmState::normal);
    if (depth == 0) return;
    for (int number = 0; number < deed_count; ++number) {
      AlarmBench next = bench;
      next.announced.clear();
      do_it(static_cast<Deed>(number), next);
      on_from(next, depth - 1);
    }
  }
};

TEST(AlarmTable, ThereIsAWayBackFromEverywhere) {
  WayBack way;
  way.on_from(AlarmBench{}, 3);
  EXPECT_EQ(way.ends, 1 + 12 + 144 + 1728);
}

}  // namespace
}  // namespace tidewright
