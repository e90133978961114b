// The product water is above zero: ions pass the resin.
#include <algorithm>

#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

// Membranes of this kind are rated for 90 to 98 %; below that the membrane is to blame. [common
// practice, no source]
constexpr double rejection_poor = 0.90;

// Where it falls back to: half a ppm or one step of the meter below the limit.
PartsPerMillion deadband(const room::Room& room) {
  const auto meter = room::find(room, room::Quantity::dissolved_solids, room::Place::product);
  return {std::max(0.5, meter ? room.instruments[*meter].step : 0)};
}

Judgement judge(const picture::Picture& picture) {
  if (!picture.room.purifier) return {};
  const state::Finding& finding = picture.findings[room::RuleId::resin_breakthrough];
  if (finding.active && picture.ledger.resin_changed > finding.active_since) return {};
  if (!picture.product) return {Verdict::unknown, {}};

  const PartsPerMillion limit = picture.room.purifier->notify_at;
  const PartsPerMillion ppm = picture.product->ppm;
  // Perfect resin reads 0 and 1 on a whole-ppm meter: what only reaches the limit tells something
  // when it does so all the time.
  const bool above = ppm > (finding.active ? limit - deadband(picture.room) : limit);
  const bool steady = picture.product->lowest && *picture.product->lowest >= limit;
  if (!above && !steady) return {};
  Reason why{Why::product_above_zero,
             no_subject,
             {static_cast<float>(ppm.value), static_cast<float>(limit.value),
              static_cast<float>(picture.product->litres.value)}};
  // Only a reading between membrane and resin can tell which of the two it is.
  if (picture.rejection) {
    why.why = *picture.rejection < rejection_poor ? Why::product_membrane : Why::product_resin;
    why.numbers[2] = static_cast<float>(100 * *picture.rejection);
  }
  return {Verdict::on, why, never};
}

bool applies(const room::Room& room) {
  return room.purifier &&
         room::find(room, room::Quantity::dissolved_solids, room::Place::product).has_value();
}

}  // namespace

extern const Rule resin_breakthrough{
    .id = room::RuleId::resin_breakthrough,
    .name = "resin_breakthrough",
    .title = "The product water is above zero",
    .priority = Priority::soon,
    .latching = Latching::never,
    .respond_within = 24h,
    .on_delay = 0s,  // a median over minutes and litres is delay enough
    .off_delay = 0s,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "the product meter, in settled running",
        .limit =
            "over 1 ppm or the file's figure, median over 5 min and 2 L of settled running; or "
            "not once below it in nine readings over twice as much; ends half a ppm or one "
            "meter step below",
        .origin = "our own choice: one step of a whole-ppm meter, for perfect water shows 0 or 1",
        .deadband = "half a ppm, or one step of the meter",
        .causes = "spent resin; a membrane that lets too much through",
        .consequence = "salts come into the vat and into the tank",
        .action = "Rotate the resin canisters: the second moves to the front, fresh resin goes in "
                  "last. Rinse, then tell `rotated`. If nobody knows whether the membrane is to "
                  "blame, measure between membrane and resin first",
        .automatic = "nothing, or the pump stops above the file's stop figure if the file says so",
        .test = "compare the meter with a second one in the same glass (every 3 months)"}};

}  // namespace tidewright::rules
