#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/ledger/leak.hpp"
#include "core/report/fields.hpp"
#include "core/report/things.hpp"

namespace tidewright::report {
namespace {

using picture::Picture;

// What was found, the litres at stake, and by how many deviations of the noise it is beyond what
// is allowed.
struct Verdict {
  std::string word;
  Reason why;
  std::optional<double> litres;
  std::optional<double> deviations;
};

std::optional<Verdict> verdict(const Picture& picture, room::RuleId rule) {
  const state::Finding& judged = picture.findings[rule];
  if (!judged.raw) return std::nullopt;
  const state::Balance& balance = picture.ledger.balance;
  const auto short_of = [&](const char* word, const state::Shortfall& shortfall) {
    return Verdict{word, judged.why, shortfall.missing.value,
                   static_cast<double>(shortfall.deviations)};
  };
  switch (judged.why.why) {
    case Why::nothing_comes:
      return short_of("stuck float", balance.stall);
    case Why::little_comes:
      return short_of("slow production", balance.slow);
    case Why::drawn_unusual:
      return Verdict{"unusual draw", judged.why, balance.draws.litres.value, {}};
    default:
      break;
  }
  const LitresPerHour beyond =
      balance.leak.rate - ledger::fall_allowed(picture.room, balance.habit);
  return Verdict{"leak", judged.why, balance.leak.litres.value, beyond / balance.leak.error};
}

// The share of chance that is left out, in percent; more than 99.9 is said by nobody.
double confidence(double deviations) {
  const double sure = 100 * (1 - std::erfc(deviations / std::numbers::sqrt2) / 2);
  return std::clamp(sure, 50.0, 99.9);
}

void add_verdict(const Picture& picture, Fields& fields) {
  auto found = verdict(picture, room::RuleId::draw_unusual);
  if (!found) found = verdict(picture, room::RuleId::water_balance_off);
  if (!found) {
    fields.add("verdict", std::string("nothing unusual"))
        .add("why", words(picture.room, {}))
        .unknown("litres", "nothing is missing")
        .unknown("confidence_percent", "there is no verdict");
    return;
  }
  fields.add("verdict", found->word)
      .add("why", words(picture.room, found->why))
      .add_if("litres", found->litres, "")
      .add_if("confidence_percent",
              found->deviations ? std::optional{confidence(*found->deviations)} : std::nullopt,
              "a draw is seen, not reckoned");
}

}  // namespace

Thing balance(const Picture& picture) {
  const state::Balance& balance = picture.ledger.balance;
  Fields fields{"balance", ""};
  add_verdict(picture, fields);
  fields.add_if("usual_fall_l_h",
                balance.habit.learned > 0 ? std::optional{balance.habit.usual.value} : std::nullopt,
                "it is learned from eight hours on in which nothing runs", 2);
  fields.add("allowed_fall_l_h", ledger::fall_allowed(picture.room, balance.habit).value, 2);
  fields.add("gauge_scatter_l", picture.ledger.noise.spread.value, 2);
  const bool drawn = balance.draws.last != long_ago;
  fields.add_if("drawn_last_l", drawn ? std::optional{balance.draws.litres.value} : std::nullopt,
                "nothing has been drawn yet");
  fields.add_if("drawn_last_at",
                drawn ? std::optional{wall_time(balance.draws.last, picture.circumstances.wall)}
                      : std::nullopt,
                "nothing has been drawn yet");
  return fields.done();
}

}  // namespace tidewright::report
