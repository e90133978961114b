// An instrument that others contradict, or that has been of no use for long.
#include <algorithm>

#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;
using room::Quantity;

constexpr Duration uncertain_longest = 1h;
constexpr Duration bad_longest = 24h;

bool is_contradicted(const state::Signal& signal) {
  return signal.doubt != Why::nothing && signal.why == signal.doubt;
}

// Leak sensors and the vat's gauge have alarms of their own when they are lost.
bool has_own_alarm(const room::Instrument& instrument) {
  const bool gauge = instrument.quantity == Quantity::level && instrument.place == room::Place::vat;
  return gauge || instrument.quantity == Quantity::wetness;
}

// When the instrument will have been of no use for too long; never, if it is good.
Instant of_no_use_at(const picture::Picture& picture, std::size_t i) {
  const state::Signal& signal = picture.signals[i];
  if (signal.quality == Quality::good || has_own_alarm(picture.room.instruments[i])) return never;
  const Instant since = std::max(signal.lost, picture.circumstances.started);
  return since + (signal.quality == Quality::bad ? bad_longest : uncertain_longest);
}

Judgement judge(const picture::Picture& picture) {
  if (!picture.circumstances.link_up) return {Verdict::unknown, {}};  // broker_lost is the cause
  Judgement judgement;
  for (std::size_t i = 0; i < picture.room.instruments.size(); ++i) {
    const state::Signal& signal = picture.signals[i];
    const auto index = static_cast<std::uint8_t>(i);
    if (is_contradicted(signal)) {
      const auto [a, b] = signal.doubt_numbers;
      return {Verdict::on, {signal.doubt, index, {a, b}}, never};
    }
    const Instant due = of_no_use_at(picture, i);
    if (due > picture.now) {
      judgement.judge_again = std::min(judgement.judge_again, due);
    } else if (judgement.verdict == Verdict::off) {
      const Instant since = std::max(signal.lost, picture.circumstances.started);
      judgement.verdict = Verdict::on;
      judgement.why = {
          Why::doubtful_for_long, index, {static_cast<float>(hours(picture.now - since))}};
    }
  }
  return judgement;
}

bool applies(const room::Room& room) {
  return std::any_of(room.instruments.begin(), room.instruments.end(),
                     [](const room::Instrument& i) { return i.quantity != Quantity::wetness; });
}

}  // namespace

extern const Rule signal_doubtful{
    .id = room::RuleId::signal_doubtful,
    .name = "signal_doubtful",
    .title = "A reading is not to be trusted",
    .priority = Priority::days,
    .latching = Latching::never,
    .respond_within = 72h,
    .on_delay = 0s,     // each comparison has taken its time already
    .off_delay = 1min,  // before level_lost ends, or it would be told when all is over
    .consequence_of = room::RuleId::level_lost,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "every instrument but the leak sensors, and its neighbours",
        .limit =
            "instruments that contradict each other: twins, gauge and high-high switch, gauge "
            "and product meter, feed and product and concentrate, pump power and flow; the "
            "same value for longer than `flat_after`; or unbelievable for 1 h, silent for 24 h",
        .origin = "our own choice; the keys say each figure",
        .causes = "drift, a dirty or dried-up probe, a stuck impeller, a wrong setting, an empty "
                  "battery",
        .consequence = "wrong decisions: what is doubted drives nothing but danger",
        .action = "Measure by hand or with another meter, clean the probe and calibrate it; "
                  "replace it if it stays wrong",
        .automatic = "what is doubted is not used to let anything run; the more dangerous of two "
                     "readings rules",
        .test = "hold the product probe in tap water for an hour with its twin in the product"}};

}  // namespace tidewright::rules
