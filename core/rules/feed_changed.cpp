// The feed water is not what it used to be: what it brings may reach carbon, membrane and resin.
#include <cmath>

#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

constexpr Duration learned_enough = 24h;
constexpr double ends_at = 2.0 / 3;  // of the share at which it comes

Judgement judge(const picture::Picture& picture) {
  const state::FeedLevel& feed = picture.ledger.feed;
  if (!picture.room.purifier || feed.learned < Duration{learned_enough}) return {};
  const bool active = picture.findings[room::RuleId::feed_changed].active;
  const double share = picture.room.purifier->feed_change * (active ? ends_at : 1);
  // A whole-ppm meter in very soft water: one step is not a change.
  const double off = std::abs(feed.lately.value - feed.usual.value);
  if (off <= share * feed.usual.value || off < 5) return {};
  const auto meter = room::find(picture.room, room::Quantity::dissolved_solids, room::Place::feed);
  const double now = meter ? picture.signals[*meter].value : feed.lately.value;
  return {Verdict::on,
          {Why::feed_changed,
           no_subject,
           {static_cast<float>(feed.lately.value), static_cast<float>(feed.usual.value),
            static_cast<float>(now)}},
          never};
}

bool applies(const room::Room& room) {
  return room.purifier &&
         room::find(room, room::Quantity::dissolved_solids, room::Place::feed).has_value();
}

}  // namespace

extern const Rule feed_changed{
    .id = room::RuleId::feed_changed,
    .name = "feed_changed",
    .title = "The feed water has changed",
    .priority = Priority::days,
    .latching = Latching::never,
    .respond_within = std::chrono::days{3},
    .on_delay = 30min,
    .off_delay = 30min,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "the feed meter while water runs: its mean over an hour or so, against its mean "
                  "over a week of running",
        .limit = "30 % off, or the file's feed_change, and at least 5 ppm; judged after a day of "
                 "running has been seen",
        .origin = "our own choice: seasons move a town's water by less in a week",
        .deadband = "it ends at two thirds of that",
        .causes = "the utility flushes its mains, takes another well, or doses more chlorine; work "
                  "on the pipes; a softener that regenerates or has run out",
        .consequence = "chlorine or dirt reaches the membrane; the resin is spent sooner",
        .action = "Measure chlorine before and after the carbon, and look at the prefilter: change "
                  "what is brown or lets chlorine through. Ask the utility what it did",
        .automatic = "nothing: water is made as before; what is usual is learned anew within "
                     "weeks, and the alarm ends by itself",
        .test = "hold the feed probe for an hour of running in water twice as strong"}};

}  // namespace tidewright::rules
