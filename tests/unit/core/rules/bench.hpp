// A full room on a bench: gauge, leak sensor, high-high switch, meters, a pump with feedback and
// power; and a picture of it that a test sets as it likes.
#pragma once

#include "core/picture/picture.hpp"
#include "core/rules/catalogue.hpp"

namespace tidewright {

struct RuleBench {
  // In the order in which they stand in the room.
  enum : room::InstrumentIndex { floor, gauge, high_high, product_meter, feedback, watts };

  RuleBench() {
    using room::Place;
    using room::Quantity;
    add("floor", Quantity::wetness, Place::floor);
    add("gauge", Quantity::level, Place::vat, 2);
    add("high", Quantity::float_switch, Place::vat_high_high);
    add("product", Quantity::dissolved_solids, Place::product, 1);
    add("says", Quantity::feedback, Place::plug);
    add("watts", Quantity::power, Place::plug);
    room::Actuator booster;
    booster.id = "booster";
    room.actuators.push_back(booster);
    room.vat = room::Vat{.id = "pure",
                         .holds = "pure water",
                         .capacity = Litres{200},
                         .low = Litres{40},
                         .start_below = Litres{80},
                         .stop_at = Litres{180},
                         .enough = Litres{100},
                         .top_off_per_day = Litres{5}};
    room.purifier = room::Purifier{};
    room.purifier->driven_by = 0;
    room.purifier->rated = LitresPerHour{12};
    room.rules = rules::default_settings();
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
  }

  void add(const char* id, room::Quantity quantity, room::Place place, double step = 0) {
    room::Instrument instrument;
    instrument.id = id;
    instrument.quantity = quantity;
    instrument.place = place;
    instrument.step = step;
    room.instruments.push_back(instrument);
  }

  rules::Judgement judge(room::RuleId id) const { return rules::rule(id).judge(picture); }
  rules::Verdict verdict(room::RuleId id) const { return judge(id).verdict; }

  room::Room room;
  State state;
  picture::Picture picture{.room = room,
                           .circumstances = state.circumstances,
                           .signals = state.signals,
                           .ledger = state.ledger,
                           .make_water = state.make_water,
                           .drives = state.drives,
                           .latches = state.latches,
                           .findings = state.findings,
                           .now = Instant{std::chrono::hours{1000}}};
};

}  // namespace tidewright
