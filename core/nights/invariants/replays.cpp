#include <algorithm>
#include <map>

#include "core/nights/invariants/judging.hpp"
#include "core/step.hpp"

namespace tidewright::nights {
namespace {

// The same events, but for those that are left out: a deadline stands in for them.
template <class LeaveOut>
Journal again(const room::Room& room, const Journal& first, const LeaveOut& leave_out) {
  std::map<std::uint64_t, State> kept{{0, State{}}};
  for (const Journal::Restart& restart : first.restarts) kept[restart.kept_by];
  Journal second;
  State state;
  Effects effects;
  auto restart = first.restarts.begin();
  for (std::size_t i = 0; i < first.events.size(); ++i) {
    while (restart != first.restarts.end() && restart->at == i) {
      state = kept[restart++->kept_by];
    }
    Event event = first.events[i];
    if (leave_out(event)) event.what = Tick{};
    step(room, state, event, effects);
    second.add(event, effects);
    if (const auto found = kept.find(i + 1); found != kept.end()) found->second = state;
  }
  return second;
}

bool is_command(const Journal::Done& done) { return std::holds_alternative<Command>(done.effect); }

// Where the two first differ.
template <class Counts>
Complaint difference(const Journal& first, const Journal& second, const Counts& counts) {
  std::vector<Journal::Done> one, other;
  std::copy_if(first.done.begin(), first.done.end(), std::back_inserter(one), counts);
  std::copy_if(second.done.begin(), second.done.end(), std::back_inserter(other), counts);
  const std::size_t most = std::max(one.size(), other.size());
  for (std::size_t i = 0; i < most; ++i) {
    const bool both = i < one.size() && i < other.size();
    if (both && one[i].by == other[i].by && one[i].effect == other[i].effect) continue;
    const std::size_t by = i < one.size() ? one[i].by : other[i].by;
    return fmt::format("effect {} of {} and {} differs, of event {}", i, one.size(), other.size(),
                       by);
  }
  return std::nullopt;
}

Complaint judge_replay(const room::Room& room, const Journal& journal) {
  const auto nothing = [](const Event&) { return false; };
  return difference(journal, again(room, journal, nothing),
                    [](const Journal::Done&) { return true; });
}

Complaint judge_people(const room::Room& room, const Journal& journal) {
  const auto quiets = [](const Event& event) {
    const auto* ask = std::get_if<Ask>(&event.what);
    return ask != nullptr && (ask->kind == AskKind::acknowledge || ask->kind == AskKind::shelve ||
                              ask->kind == AskKind::unshelve);
  };
  if (std::none_of(journal.events.begin(), journal.events.end(), quiets)) return std::nullopt;
  return difference(journal, again(room, journal, quiets), is_command);
}

Complaint judge_clock(const room::Room& room, const Journal& journal) {
  // Where fills begin by the hour of the day, the wall clock must count.
  if (room.purifier && room.purifier->start_hours) return std::nullopt;
  const auto clock = [](const Event& event) {
    return std::holds_alternative<ClockSet>(event.what);
  };
  const auto steps =
      static_cast<std::size_t>(std::count_if(journal.events.begin(), journal.events.end(), clock));
  if (steps <= journal.restarts.size()) return std::nullopt;
  return difference(journal, again(room, journal, clock), is_command);
}

}  // namespace

extern const Invariant people_change_no_command{
    .number = 11,
    .name = "people_change_no_command",
    .sentence = "with every acknowledging and shelving left out, the commands are the same",
    .after_night = judge_people};

extern const Invariant clock_moves_no_timer{
    .number = 14,
    .name = "clock_moves_no_timer",
    .sentence = "with every step of the wall clock left out, the commands are the same",
    .after_night = judge_clock};

extern const Invariant replay_is_equal{
    .number = 18,
    .name = "replay_is_equal",
    .sentence = "the same events give the same effects again, over every restart",
    .after_night = judge_replay};

}  // namespace tidewright::nights
