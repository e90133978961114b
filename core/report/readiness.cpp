#include "core/report/readiness.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "core/report/phrases.hpp"
#include "core/report/report.hpp"

namespace tidewright::report {
namespace {

using picture::Picture;
using room::Place;
using room::Quantity;

// "41 L to go, about 3 h 20 min".
void wait_for_litres(const Picture& picture, Litres missing, Readiness& readiness) {
  const std::string to_go = number(missing.value) + " L to go";
  const auto rate = coming_in(picture);
  if (!rate) {
    readiness.waiting_for.push_back(to_go + ", and no water is being made");
    return;
  }
  readiness.at = when_gained(picture, missing, *rate);
  readiness.waiting_for.push_back(to_go + ", about " + lasting(*readiness.at - picture.now));
}

bool is_enough(const Picture& picture, Readiness& readiness) {
  if (room::find(picture.room, Quantity::level, Place::vat)) {
    if (!picture.level) {
      readiness.waiting_for.emplace_back("a believable reading of the vat gauge");
      return false;
    }
    const Litres missing = picture.room.vat->enough - *picture.level;
    if (missing.value <= 0) return true;
    wait_for_litres(picture, missing, readiness);
    return false;
  }
  const auto float_switch = room::find(picture.room, Quantity::float_switch, Place::vat);
  if (!float_switch) {
    readiness.waiting_for.emplace_back("somebody to look: the level is not measured");
  } else if (picture.signals[*float_switch].quality != Quality::good) {
    readiness.waiting_for.emplace_back("a reading of the float switch");
  } else if (!picture.float_full) {
    readiness.waiting_for.emplace_back("the float switch to say full");
  } else {
    return true;
  }
  return false;
}

void judge_purity(const Picture& picture, Readiness& readiness) {
  const state::Finding& breakthrough = picture.findings[room::RuleId::resin_breakthrough];
  readiness.purity = "not known";
  if (breakthrough.active) {
    readiness.purity = "not pure";
    readiness.purity_why = words(picture.room, breakthrough.why);
    readiness.waiting_for.push_back("pure water: " + readiness.purity_why);
  } else if (picture.product) {
    readiness.purity = "pure";
    readiness.purity_why =
        fmt::format("the product water shows {} ppm", number(picture.product->ppm.value));
  } else if (room::find(picture.room, Quantity::dissolved_solids, Place::product)) {
    readiness.purity_why = "the product water has not been measured long enough in running";
  } else {
    readiness.purity_why = "the product water is not measured";
  }
}

}  // namespace

std::optional<LitresPerHour> coming_in(const Picture& picture) {
  if (!picture.working) return std::nullopt;
  const LitresPerHour measured = picture.ledger.level.rate;
  if (measured.value > 0) return measured;
  if (picture.flow_expected.value > 0) return picture.flow_expected;
  return std::nullopt;
}

Instant when_gained(const Picture& picture, Litres litres, LitresPerHour rate) {
  const double hours_left = litres.value / rate.value;
  // Counted from the gauge's last step, so that the time stands still between two steps.
  const Instant from = std::max(picture.ledger.level.moved, picture.ledger.fill.began);
  const Instant at = from + Duration{static_cast<Duration::rep>(hours_left * 3.6e6)};
  return std::max(at, picture.now);
}

Readiness readiness(const Picture& picture) {
  Readiness readiness;
  const bool enough = is_enough(picture, readiness);
  judge_purity(picture, readiness);
  readiness.ready = enough && readiness.purity != "not pure";
  // When water that is not pure will be, nobody knows.
  if (readiness.purity == "not pure") readiness.at.reset();
  return readiness;
}

}  // namespace tidewright::report
