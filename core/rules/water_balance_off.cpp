// What comes into the vat and what leaves it do not add up: a hidden leak, a stuck float, a clogged
// filter. The ledger finds them; where the level alone cannot tell two of them apart the words say
// so.
#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

float to_float(double value) { return static_cast<float>(value); }

Judgement judge(const picture::Picture& picture) {
  const state::Balance& balance = picture.ledger.balance;
  if (const state::Leak& leak = balance.leak; leak.found) {
    return {Verdict::on,
            {Why::water_leaves,
             no_subject,
             {to_float(leak.rate.value), to_float(leak.litres.value),
              to_float(balance.habit.usual.value)}},
            never};
  }
  if (const state::Shortfall& stall = balance.stall; stall.found) {
    return {Verdict::on,
            {Why::nothing_comes,
             no_subject,
             {to_float(seconds(stall.lasting) / 60), to_float(stall.missing.value),
              to_float(stall.usual.value)}},
            never};
  }
  if (const state::Shortfall& slow = balance.slow; slow.found) {
    return {Verdict::on,
            {Why::little_comes,
             no_subject,
             {to_float(slow.rate.value), to_float(slow.usual.value), to_float(slow.missing.value)}},
            never};
  }
  return {};
}

bool applies(const room::Room& room) {
  return room::driving(room) && room.vat &&
         room::find(room, room::Quantity::level, room::Place::vat).has_value();
}

}  // namespace

extern const Rule water_balance_off{
    .id = room::RuleId::water_balance_off,
    .name = "water_balance_off",
    .title = "The water does not add up",
    .priority = Priority::soon,
    .latching = Latching::never,
    .respond_within = 4h,
    .on_delay = 0s,  // hours of readings are delay enough
    .off_delay = 0s,
    .consequence_of = room::RuleId::level_flat_while_filling,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "the vat's gauge, as a line through hours of readings; what was drawn or poured "
                  "at a stroke is left out",
        .limit = "while nothing runs, the level falls steadily for 3 h and surely by more than "
                 "0.5 L/h beyond its habit (2 L/h before the habit is known); while the pump runs, "
                 "the level stops rising, and neither noise nor two draws explain it; or, after "
                 "three fills, less than 0.6 of what they have taught comes over 2 h",
        .origin = "at most one false alarm a year: five deviations of the gauge's own noise; the "
                  "litres are our own choice",
        .causes = "a hidden leak, a top-off that takes more than it did, a float valve that has "
                  "stuck, a closed feed cock, a clogged filter or membrane, somebody who takes "
                  "water",
        .consequence = "water is lost where nobody looks, or none is made",
        .action = "If water leaves: look under the vat and along its hoses, and at the tank's "
                  "top-off. If none or little comes: move the float by hand, look at the feed "
                  "cock, the prefilter and the pressure",
        .automatic = "nothing; a fill that stays flat is stopped by level_flat_while_filling",
        .test = "open the vat's tap to a thin trickle (1 L/h is five or six drops a second) while "
                "nothing runs: a gauge of 1 mm must show it within 4 h"}};

}  // namespace tidewright::rules
