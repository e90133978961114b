#include "daemon/alerts/alerts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <random>

#include "daemon/alerts/way.hpp"
#include "daemon/base/instance.hpp"
#include "daemon/log/log.hpp"

namespace tidewright::alerts {
namespace {

using post::Fate;
using post::Letter;
using post::Way;
using namespace std::chrono_literals;

constexpr int file_mark = 0x7477626f;  // "twbo"
constexpr auto heard_every = 100ms;    // while the courier is under way
constexpr auto written_again_after = 5s;

// 2 s, doubled to an hour, each shortened by chance: not all that wait for a server come at once.
std::chrono::milliseconds back_off(int failures) {
  static std::minstd_rand chance{std::random_device{}()};
  constexpr std::chrono::milliseconds first = 2s, longest = 1h;
  const auto whole = std::min(longest, first * (1 << std::min(failures - 1, 11)));
  std::uniform_int_distribution<long> part(whole.count() * 3 / 4, whole.count());
  return std::chrono::milliseconds{part(chance)};
}

}  // namespace

Alerts::Alerts(const config::Household& household, const Clock& clock,
               const std::filesystem::path& state_directory, const State& found,
               std::filesystem::path courier)
    : household_(household),
      clock_(clock),
      file_(state_directory / "outbox.db", file_mark),
      outbox_(new_instance(), found.notices.last),
      courier_(std::move(courier)) {
  if (household.alerts.webhook) roads_.push_back({.way = Way::webhook});
  if (household.alerts.mail) roads_.push_back({.way = Way::mail});
  begin(found);
}

void Alerts::begin(const State& found) {
  if (!file_.unreadable().empty()) {
    log::error(fmt::format("What was on its way to people could not be read ({}) and is lost.",
                           file_.unreadable()));
  }
  const auto kept = file_.text() ? Outbox::of(*file_.text()) : std::nullopt;
  outbox_ = Outbox::resumed(kept, outbox_.instance(), found.notices.last);
  for (const Way way : post::ways) {
    const bool wanted = std::any_of(roads_.begin(), roads_.end(),
                                    [way](const Road& road) { return road.way == way; });
    if (!wanted) outbox_.drop(way);
  }
  write();
  take(found);
}

void Alerts::take(const State& state) {
  const Outbox::Taken taken = outbox_.take(household_, state);
  if (taken.given_up > 0) {
    log::error(fmt::format("{} old announcements are given up: too many wait to be sent.",
                           taken.given_up));
  }
  if (taken.news) write();
}

void Alerts::write() {
  const bool before = written_;
  written_ = file_.write(outbox_.to_text());
  if (before && !written_) {
    log::error("The disk does not take what is on its way to people; it is sent all the same.");
  }
  write_again_ = Steady::now() + written_again_after;
}

void Alerts::fail(Road& road, const std::string& why) {
  ++road.failures;
  road.next_try = Steady::now() + back_off(road.failures);
  if (road.trouble != why) {
    log::warning(fmt::format("People cannot be told by {}: {}.", post::name(road.way), why));
  }
  road.trouble = why;
}

void Alerts::settle(const post::Outcome& outcome) {
  has_news_ = true;
  // Behind one that failed the courier tries none of its way.
  std::erase_if(with_courier_, [&](const Letter& letter) {
    return letter.way == outcome.way &&
           (letter.notice == outcome.notice || outcome.fate == Fate::failed);
  });
  if (!outbox_.settle(outcome)) {
    log::error(fmt::format("Announcement {} is given up: the receiver of {} refuses it: {}.",
                           outcome.notice, post::name(outcome.way), outcome.said));
  }
  const auto road = std::find_if(roads_.begin(), roads_.end(),
                                 [&](const Road& each) { return each.way == outcome.way; });
  if (road == roads_.end()) return;
  if (outcome.fate != Fate::delivered) return fail(*road, outcome.said);
  if (!road->trouble.empty()) {
    log::info(fmt::format("People are told by {} again.", post::name(road->way)));
  }
  *road = {.way = road->way, .arrived = clock_.now()};
}

void Alerts::set_out() {
  post::Orders orders{household_.alerts.webhook, household_.alerts.mail, {}};
  for (const Road& road : roads_) {
    if (Steady::now() < road.next_try) continue;
    for (Letter& letter : outbox_.due(road.way, clock_.now())) {
      orders.letters.push_back(std::move(letter));
    }
  }
  if (orders.letters.empty()) return;
  with_courier_ = orders.letters;
  if (courier_.send(orders)) return;
  while (!with_courier_.empty()) {
    const Letter& letter = with_courier_.front();
    settle({letter.notice, letter.way, Fate::failed, "the courier cannot be started"});
  }
}

Alerts::Steady::time_point Alerts::tend() {
  if (roads_.empty()) return Steady::time_point::max();
  const auto outcomes = courier_.hear();
  for (const post::Outcome& outcome : outcomes) settle(outcome);
  if (!outcomes.empty() || (!written_ && Steady::now() >= write_again_)) write();
  if (!courier_.under_way()) {
    while (!with_courier_.empty()) {
      const Letter& letter = with_courier_.front();
      settle({letter.notice, letter.way, Fate::failed, "the courier came back without a word"});
    }
    set_out();
  }
  if (courier_.under_way()) return Steady::now() + heard_every;

  auto until = written_ ? Steady::time_point::max() : write_again_;
  const Instant now = clock_.now();
  for (const Road& road : roads_) {
    if (!outbox_.due(road.way, now).empty()) until = std::min(until, road.next_try);
    const Instant next = outbox_.next_due(road.way, now);
    if (next != never) until = std::min(until, Steady::now() + clock_.until(next));
  }
  return until;
}

std::vector<report::Thing> Alerts::ways() {
  has_news_ = false;
  std::vector<report::Thing> things;
  for (const Road& road : roads_) {
    things.push_back(
        thing({road.way, outbox_.waiting(road.way), road.arrived, road.trouble}, clock_.wall()));
  }
  return things;
}

}  // namespace tidewright::alerts
