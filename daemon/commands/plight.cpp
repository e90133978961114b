#include "daemon/commands/plight.hpp"

#include <algorithm>

#include "core/picture/proof_due.hpp"

namespace tidewright::commands {
namespace {

using namespace std::chrono_literals;
using room::Quantity;
using room::Room;
using room::RuleId;

constexpr Duration beat = 30s;
constexpr Duration longest = 24h * 4;
constexpr std::uint8_t not_authorized = 135;  // MQTT 5
constexpr double leaks = 4;                   // L/h
constexpr Duration well_for = 10min;          // all is well at first, and a fill runs where it can

// One room in which one thing goes wrong: what its instruments say follows from the daemon's own
// commands and from that.
class Life {
 public:
  Life(const Room& room, RuleId alarm) : room_(room), alarm_(alarm) {
    if (room.vat) level_ = room.vat->start_below.value_or(room.vat->enough).value / 2;
    for (std::size_t i = 0; i < room.instruments.size(); ++i) spoke_.push_back(long_ago);
    if (alarm == RuleId::proof_test_due) state_.proofs.installed = begin_ - 24h * 28;
  }

  std::optional<Plight> live() {
    remember();
    const bool readable = alarm_ != RuleId::records_unreadable;
    const bool clean = readable && alarm_ != RuleId::unclean_start;
    happen(Started{.clean = clean, .away = 1h, .readable = readable});
    happen(Link{.up = true});
    while (!came_ && now_ < begin_ + longest) {
      now_ += beat;
      fill();
      if (now_ == begin_ + well_for) befall();
      if (now_ == begin_ + well_for + 5min && alarm_ == RuleId::lease_not_kept) try_lease();
      speak();
      happen(Tick{});
      plugs_answer();
    }
    return came_;
  }

 private:
  bool wrong() const { return now_ > begin_ + well_for; }
  bool is(RuleId alarm) const { return alarm_ == alarm && wrong(); }
  bool runs() const {
    const auto driving = room::driving(room_);
    return driving && state_.drives[*driving].on;
  }

  void happen(const decltype(Event::what)& what) {
    if (came_) return;
    const Event event{now_, what};
    const State before = state_;
    Effects effects;
    step(room_, state_, event, effects);
    if (!state_.findings[alarm_].active || before.findings[alarm_].active) return;
    came_ = Plight{before, event, state_, effects};
  }

  // What takes weeks has gone on before.
  void remember() {
    state::Ledger& ledger = state_.ledger;
    const auto ago = [this](Duration span) { return begin_ - span; };
    if (alarm_ == RuleId::feed_changed) {
      ledger.feed = {{300}, {300}, 7 * 24h, ago(1h)};
    } else if (alarm_ == RuleId::resin_near_end && room_.purifier && room_.purifier->lead_resin) {
      ledger.resin_changed = ago(60 * 24h);
      const double equivalents = 0.47 * room_.purifier->lead_resin->value;
      ledger.resin = {Litres{3000}, equivalents, equivalents};
    } else if (alarm_ == RuleId::water_aged && room_.vat && room_.vat->water_age_longest) {
      ledger.upkeep = {ago(700 * 24h), begin_, ago(1s), 2 * *room_.vat->water_age_longest};
    } else if (alarm_ == RuleId::vat_cleaning_due && room_.vat && room_.vat->clean_every) {
      ledger.upkeep.began = ledger.upkeep.aged = ago(*room_.vat->clean_every - 1h);
    }
  }

  void fill() {
    if (!room_.purifier || is(RuleId::level_flat_while_filling)) return;
    if (is(RuleId::water_balance_off) && !runs()) level_ -= leaks * seconds(beat) / 3600;
    if (is(RuleId::draw_unusual)) draw();
    const bool flows = runs() || is(RuleId::fill_not_stopping);
    const double share = is(RuleId::fill_overlong) ? 0.3 : 1;
    if (flows) level_ += share * room_.purifier->rated.value / 2 * seconds(beat) / 3600;
  }

  // Once the vat is nearly full its water runs out through an open hose.
  void draw() {
    const double capacity = room_.vat->capacity.value;
    open_ = open_ || level_ > 0.8 * capacity;
    if (open_) level_ = std::max(0.0, level_ - capacity / 40);
  }

  // What is no reading.
  void befall() {
    if (alarm_ == RuleId::broker_lost) happen(Link{.up = false});
    if (alarm_ == RuleId::store_failed) happen(Recorded{.ok = false});
    if (alarm_ == RuleId::command_undelivered)
      happen(Delivery{.actuator = 0, .code = not_authorized});
    if (alarm_ == RuleId::stock_low)
      happen(Tell{.kind = TellKind::stocked, .ticket = 1, .supply = 0});
    if (alarm_ == RuleId::actuator_disobeys || alarm_ == RuleId::lease_not_kept) {
      happen(Ask{.kind = AskKind::stop, .ticket = 1});
    }
    if (alarm_ == RuleId::bypass_active) {
      for (const AskKind kind : {AskKind::bypass, AskKind::confirm_bypass}) {
        happen(Ask{.kind = kind, .ticket = 1, .cause = room::CauseId::frost, .token = 1});
      }
    }
    if (alarm_ != RuleId::leak_sensor_lost) return;
    for (std::size_t i = 0; i < room_.instruments.size(); ++i) {
      const room::Instrument& instrument = room_.instruments[i];
      if (instrument.quantity != Quantity::wetness || !instrument.has_availability) continue;
      happen(Availability{static_cast<room::InstrumentIndex>(i), false});
    }
  }

  // None of the plugs here goes off by itself.
  void try_lease() {
    for (std::size_t n = 0; n < room_.actuators.size(); ++n) {
      const auto i = static_cast<room::ActuatorIndex>(n);
      if (!picture::lease_can_be_tried(room_, i)) continue;
      return happen(Ask{.kind = AskKind::test_lease, .ticket = 1, .actuator = i});
    }
  }

  void speak() {
    if (is(RuleId::broker_lost)) return;
    for (std::size_t i = 0; i < room_.instruments.size(); ++i) {
      const room::Instrument& instrument = room_.instruments[i];
      const auto value = says(instrument);
      const Duration every = std::min<Duration>(instrument.reports_every, 1min);
      if (!value || now_ - spoke_[i] < every) continue;
      spoke_[i] = now_;
      happen(Reading{.instrument = static_cast<room::InstrumentIndex>(i), .value = *value});
    }
  }

  // Their word follows the command at once.
  void plugs_answer() {
    if (is(RuleId::broker_lost)) return;
    for (std::size_t i = 0; i < room_.instruments.size(); ++i) {
      if (room_.instruments[i].quantity != Quantity::feedback) continue;
      const double on = switched(room_.instruments[i], 1);
      happen(Reading{.instrument = static_cast<room::InstrumentIndex>(i), .value = on});
    }
  }

  // None: it is silent.
  std::optional<double> says(const room::Instrument& instrument) const {
    const bool has_own_alarm =
        instrument.quantity == Quantity::wetness || instrument.quantity == Quantity::level;
    if (is(RuleId::signal_doubtful) && !has_own_alarm) return std::nullopt;
    switch (instrument.quantity) {
      case Quantity::wetness:
        if (is(RuleId::leak_sensor_lost)) return std::nullopt;
        return is(RuleId::leak) ? 1 : 0;
      case Quantity::level:
        if (instrument.place == room::Place::mixing_vat)
          return room_.mixing_vat->capacity.value / 2;
        if (is(RuleId::level_lost)) return std::nullopt;
        return is(RuleId::vat_low) ? 0 : level_;
      case Quantity::float_switch:
        return is(RuleId::vat_high_high) && instrument.place == room::Place::vat_high_high ? 1 : 0;
      case Quantity::dissolved_solids:
        if (instrument.place == room::Place::feed) return is(RuleId::feed_changed) ? 700 : 300;
        if (instrument.place == room::Place::permeate) {
          return is(RuleId::membrane_rejection_low) ? 90 : 10;
        }
        return is(RuleId::resin_breakthrough) ? 5 : 0;
      case Quantity::temperature:
        if (is(RuleId::frost)) return 2;
        return is(RuleId::room_hot) ? 45 : 15;
      case Quantity::flow:
        return runs() ? room_.purifier->rated.value / 2 : 0;
      case Quantity::water_count:
        return 0;
      case Quantity::pressure:
        return is(RuleId::pump_dry) ? 0 : 3;
      case Quantity::feedback:
        return switched(instrument, 1);
      case Quantity::power:
        if (is(RuleId::pump_dry)) return 0;
        if (is(RuleId::fill_not_stopping)) return 60;
        return switched(instrument, 60);
    }
    return std::nullopt;
  }

  // What a plug says of its load: as it was told, or as the fault has it.
  double switched(const room::Instrument& instrument, double when_on) const {
    if (is(RuleId::actuator_disobeys)) return instrument.quantity == Quantity::feedback ? 1 : 0;
    const bool every_other = (now_ - begin_) / 2min % 2 == 0;
    if (is(RuleId::short_cycling)) return every_other ? when_on : 0;
    return state_.drives[instrument.subject].on ? when_on : 0;
  }

  const Room& room_;
  RuleId alarm_;
  Instant begin_{24h * 365 * 50 + 12h};  // noon: within most hours of filling
  Instant now_ = begin_;
  double level_ = 0;
  bool open_ = false;  // somebody left a hose running
  std::vector<Instant> spoke_;
  State state_;
  std::optional<Plight> came_;
};

}  // namespace

std::optional<Plight> lead_into(const Room& room, RuleId alarm) { return Life(room, alarm).live(); }

}  // namespace tidewright::commands
