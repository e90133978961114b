#include "core/ledger/feed.hpp"

#include <algorithm>

namespace tidewright::ledger {
namespace {

using namespace std::chrono_literals;

// All of them choices: a week of running is a season of use, an hour is longer than a flush.
constexpr Duration usual_over = 7 * 24h;
constexpr Duration lately_over = 1h;
constexpr Duration gap_longest = 15min;

double share(Duration one, Duration all) {
  return static_cast<double>(one.count()) / static_cast<double>(all.count());
}

// One reading pulls no harder than from half as much again.
PartsPerMillion pulled(PartsPerMillion level, PartsPerMillion reading, double weight) {
  const double bite = std::max(1.0, level.value / 2);
  const double off = std::clamp(reading.value - level.value, -bite, bite);
  return {level.value + std::min(weight, 1.0) * off};
}

}  // namespace

void follow_feed(PartsPerMillion reading, Instant now, state::FeedLevel& feed) {
  if (feed.taken == long_ago) {
    feed.usual = feed.lately = reading;
    feed.taken = now;
    return;
  }
  const Duration passed = std::min(now - feed.taken, Duration{gap_longest});
  feed.taken = now;
  if (passed <= Duration{0}) return;
  feed.learned = std::min(feed.learned + passed, Duration{usual_over});
  feed.usual = pulled(feed.usual, reading, share(passed, feed.learned));
  feed.lately = pulled(feed.lately, reading, share(passed, lately_over));
}

}  // namespace tidewright::ledger
