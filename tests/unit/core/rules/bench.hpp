// The full room on a bench, with everything good; and a picture of it that a test sets as it likes.
#pragma once

#include "core/picture/picture.hpp"
#include "core/rules/catalogue.hpp"
#include "tests/support/rooms.hpp"

namespace tidewright {

struct RuleBench {
  enum : room::InstrumentIndex {
    floor = support::floor,
    gauge = support::level,
    product_meter = support::product,
    feedback = support::feedback,
    high_high = support::high_high,
    watts = support::power
  };

  RuleBench() {
    room.vat->top_off_per_day = Litres{5};
    picture.driving = 0;
    picture.level = picture.level_doubtful = Litres{100};
    picture.leak_watch = picture::Watch::good;
    picture.flow_expected = LitresPerHour{12};
    picture.flow_lowest = LitresPerHour{6};
    state.circumstances.link_up = true;
    state.ledger.level.known = true;
    for (auto& signal : state.signals) {
      signal.quality = Quality::good;
      signal.live = signal.seen = true;
      signal.good_in_a_row = 9;
    }
    state.signals[support::warmth].value = 20;
  }

  rules::Judgement judge(room::RuleId id) const { return rules::rule(id).judge(picture); }
  rules::Verdict verdict(room::RuleId id) const { return judge(id).verdict; }

  room::Room room = support::full_room();
  State state;
  picture::Picture picture{.room = room,
                           .circumstances = state.circumstances,
                           .signals = state.signals,
                           .comparison = state.comparison,
                           .ledger = state.ledger,
                           .make_water = state.make_water,
                           .lease_tests = state.lease_tests,
                           .bypasses = state.bypasses,
                           .proofs = state.proofs,
                           .drives = state.drives,
                           .latches = state.latches,
                           .findings = state.findings,
                           .now = Instant{std::chrono::hours{1000}}};
};

}  // namespace tidewright
