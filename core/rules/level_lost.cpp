// The gauge of the vat is silent or not to be believed.
#include "core/rules/lost.hpp"
#include "core/rules/rule.hpp"
#include "core/signal/ruling.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

Judgement judge(const picture::Picture& picture) {
  const auto level =
      signal::ruling(picture.room, picture.signals, room::Quantity::level, room::Place::vat);
  if (!level) return {};
  if (!picture.circumstances.link_up) return {Verdict::unknown, {}};  // broker_lost is the cause
  if (picture.level) return {came_back(picture, *level) ? Verdict::off : Verdict::unknown, {}};
  const state::Signal& signal = picture.signals[*level];
  if (awaited(signal)) return {Verdict::unknown, {}};
  if (signal.why == Why::below_the_float) return {Verdict::unknown, {}};  // vat_high_high is
  if (signal.doubt != Why::nothing && signal.why == signal.doubt) {
    const auto [a, b] = signal.doubt_numbers;
    return {Verdict::on, {signal.doubt, *level, {a, b}}, never};
  }
  return {Verdict::on, {Why::level_unusable, *level, {seconds_without(picture, *level)}}, never};
}

bool applies(const room::Room& room) {
  return room::find(room, room::Quantity::level, room::Place::vat).has_value();
}

}  // namespace

extern const Rule level_lost{
    .id = room::RuleId::level_lost,
    .name = "level_lost",
    .title = "The vat's gauge is lost",
    .priority = Priority::soon,
    .latching = Latching::on_repeat,
    .respond_within = 24h,
    .on_delay = 0s,  // one bad reading among good ones is passed over where quality is given
    .off_delay = 2min,
    .consequence_of = room::RuleId::broker_lost,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "the vat's gauge",
        .limit = "no believable level for 3 times its report interval, at least 60 s, or readings "
                 "out of range, or contradicted by its twin or by the product meter",
        .origin = "our own choice: three missed reports",
        .deadband = "two good readings on end",
        .causes = "an empty battery, weak radio, a dirty or loose gauge",
        .consequence = "no water is made; a fill that went on blind could run over",
        .action = "Look at the vat's level. Check the gauge, its battery and its cable",
        .automatic = "the fill stops; it goes on by itself when the gauge is back, and stays off "
                     "after the third loss in 24 h",
        .test = "unplug the gauge in a fill: the pump must stop"}};

}  // namespace tidewright::rules
