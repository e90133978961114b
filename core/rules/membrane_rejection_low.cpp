// The membrane lets more solids through than it should, which the resin then has to hold.
#include <algorithm>

#include "core/picture/judged.hpp"
#include "core/rules/rule.hpp"
#include "core/signal/ruling.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

constexpr Duration judged_within = 1h;
// Of a softer feed, one step of a whole-ppm meter is worth too many percent.
constexpr double feed_ppm_min = 30;
constexpr double deadband = 0.01;

// A membrane gives saltier water when it gives little; the gauge shows whether it does.
bool trickles(const picture::Picture& picture) {
  const LitresPerHour rate = picture.ledger.level.rate;
  return rate.value > 0 && rate < picture.flow_lowest;
}

// What was read lately, with water running, of a feed that is good.
bool can_be_judged(const picture::Picture& picture, double feed_ppm) {
  const state::Samples& permeate = picture.ledger.permeate;
  const bool fresh =
      permeate.count > 0 && picture.now - permeate.items[0].at <= Duration{judged_within};
  const bool runs = !picture.driving || picture.working;
  return fresh && runs && !trickles(picture) && feed_ppm >= feed_ppm_min;
}

Judgement judge(const picture::Picture& picture) {
  if (!picture.room.purifier) return {};
  constexpr Judgement unknown{Verdict::unknown, {}, never};
  const auto feed = signal::ruling(picture.room, picture.signals, room::Quantity::dissolved_solids,
                                   room::Place::feed);
  if (!feed || picture.signals[*feed].quality != Quality::good) return unknown;
  const double feed_ppm = picture.signals[*feed].value;
  const auto permeate = picture::judge_samples(picture.room, picture.ledger.permeate);
  if (!permeate || !can_be_judged(picture, feed_ppm)) return unknown;

  const bool active = picture.findings[room::RuleId::membrane_rejection_low].active;
  const double limit = picture.room.purifier->rejection_low;
  const double rejection = std::max(0.0, 1 - permeate->ppm.value / feed_ppm);
  if (rejection >= limit + (active ? deadband : 0)) return {};
  // Every sample of a longer stretch must say so, not only their median.
  const bool steady = permeate->lowest && 1 - permeate->lowest->value / feed_ppm < limit;
  if (!steady && !active) return unknown;
  return {Verdict::on,
          {Why::rejection_low,
           no_subject,
           {static_cast<float>(100 * rejection), static_cast<float>(100 * limit),
            static_cast<float>(permeate->ppm.value)}},
          never};
}

bool applies(const room::Room& room) {
  const auto meter = [&](room::Place place) {
    return room::find(room, room::Quantity::dissolved_solids, place).has_value();
  };
  return room.purifier && meter(room::Place::feed) && meter(room::Place::permeate);
}

}  // namespace

extern const Rule membrane_rejection_low{
    .id = room::RuleId::membrane_rejection_low,
    .name = "membrane_rejection_low",
    .title = "The membrane lets too much through",
    .priority = Priority::days,
    .latching = Latching::never,
    .respond_within = std::chrono::days{14},
    .on_delay = 30min,
    .off_delay = 30min,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "the meters of feed and permeate, while water runs: after the first minutes, not "
                  "at a trickle, not on readings older than an hour",
        .limit = "rejection under 90 %, or the file's rejection_low: the median over 5 min and 2 "
                 "L, and each of nine samples over twice as much",
        .origin = "common practice, no source: membranes of this kind are rated for 90 to 98 %",
        .deadband = "1 percentage point",
        .causes = "a worn or fouled membrane, a damaged seal, low feed pressure, a closed or "
                  "worn flow restrictor, chlorine that passed the carbon",
        .consequence = "the resin is used up several times faster, then salts come into the vat",
        .action = "Check the feed pressure and flush the membrane. If a day later it is no better, "
                  "check the carbon for chlorine and put in a new membrane",
        .automatic = "nothing: water is made as before, and the resin holds the rest",
        .test = "compare the permeate meter with a second one in the same glass (every 6 months)"}};

}  // namespace tidewright::rules
