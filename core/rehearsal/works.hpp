// The water works of the pretend room: from the mains through pump, membrane and resin to the vat,
// from there to the mixing vat and, when things go wrong, to the floor. Physics of its own; knows
// no instrument and no plug.
#pragma once

#include <array>
#include <optional>

#include "core/rehearsal/membrane.hpp"
#include "core/rehearsal/mixing_vat.hpp"
#include "core/rehearsal/resin.hpp"
#include "core/rehearsal/vat.hpp"
#include "core/room/room.hpp"

namespace tidewright::rehearsal {

struct WorksSettings {
  PartsPerMillion feed{320};
  MembraneSettings membrane;
  double canister_capacity_mg = 60'000;  // each of two; about 6,000 L of 10 ppm permeate
  double begins_filled = 0.5;            // of the vat's capacity
  double float_closes_at = 0.97;         // of the vat's capacity
  double float_opens_at = 0.93;
  MixingSettings mixing;
  LitresPerHour transfer{600};  // where the file does not say what its pump moves
  LitresPerHour flush{300};     // and what its flush valve lets through
};

// What drives and what stops the water at this moment.
struct Driven {
  bool pump = false;      // has mains power
  bool open = false;      // the feed's way is free (valve, or nothing that would stop it)
  bool fill_open = true;  // the product's way into the vat is free
  bool diverts = false;   // and its way to the drain
  bool flushes = false;   // the feed's way past the membrane, to the drain
  bool transfers = false;
  bool heats = false;
};

// Totals for the checks; they never fall.
struct Tally {
  Litres made;          // product that left the resin
  Litres diverted;      // of it to the drain
  Litres wasted;        // concentrate, and what rinsed the membrane
  Litres spilled;       // on the floor, in all
  Litres drawn;         // taken for the tank
  Litres transferred;   // to the mixing vat
  Litres missed;        // wanted for the tank, and not there
  Litres burst;         // from a fitting under pressure
  Duration pumping{0};  // the pump really turning
};

class Works {
 public:
  Works(const room::Room&, const WorksSettings&);

  // The works live for a short while (seconds while water flows, minutes while it stands).
  void live(Duration, const Driven&, Celsius);
  void draw(Litres);
  void draw_mixed(Litres);  // somebody takes water out of the mixing vat
  void pour(Litres water) { spill(vat_.pour(water)); }  // somebody's bucket, into the vat
  void spill(Litres);                                   // a bucket knocked over
  void dry_floor() { floor_ = Litres{0}; }
  void rotate_canisters();  // the lag moves to lead, fresh resin goes in last
  void replace_canisters();
  void spend_resin();  // both canisters

  const Vat& vat() const { return vat_; }
  const std::optional<MixingVat>& mixing() const { return mixing_; }
  Membrane& membrane() { return membrane_; }
  Litres floor() const { return floor_; }
  const Tally& tally() const { return tally_; }
  LitresPerHour flow() const { return flow_; }
  // What water meters at feed, product and concentrate would find. A burst is before the membrane
  // and behind the meter.
  LitresPerHour flow_at(room::Place) const;
  Litres passed(room::Place) const;
  bool pump_turns() const { return pump_turns_; }

  // What a probe at that place would find now.
  PartsPerMillion solids(room::Place) const;

  // What can go wrong with the works.
  FloatValve float_valve;
  bool pressure_switch_stuck = false;  // does not stop the pump against the closed float valve
  bool feed_valve_stuck = false;       // open, and does not close
  bool feed_shut = false;              // the cock is closed, or the main is dry
  bool pump_broken = false;            // powered, but does not turn
  LitresPerHour loss{0};               // from the vat into the drain, where nobody looks
  LitresPerHour burst{0};              // from a fitting to the floor while under pressure
  PartsPerMillion feed;

 private:
  // What of the feed passes the membrane in this while, and where it goes.
  void make(Duration, const Driven&);
  void transfer(Duration, Celsius);

  WorksSettings settings_;
  Vat vat_;
  std::optional<MixingVat> mixing_;
  Membrane membrane_;
  std::array<Canister, 2> canisters_;  // lead, lag
  Litres floor_;
  Tally tally_;
  LitresPerHour flow_;
  bool pump_turns_ = false;
  bool pressed_ = false;      // the feed's way is free
  bool rinsed_ = false;       // the feed runs past the membrane
  PartsPerMillion stagnant_;  // what the pipe after the resin gives off while water stands
};

}  // namespace tidewright::rehearsal
