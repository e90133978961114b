// The membrane: how much water it passes, and how much salt with it.
#pragma once

#include "core/base/instant.hpp"
#include "core/base/units.hpp"

namespace tidewright::rehearsal {

struct MembraneSettings {
  LitresPerHour rated{12};               // product at 25 degrees and the boosted pressure
  double condition = 1;                  // of the rated flow; below 1 when fouled
  double rejection = 0.97;               // of the feed's salt, at the rated flow
  double recovery = 0.25;                // product per feed water
  double line_bar = 3;                   // the mains alone
  double boosted_bar = 6;                // with the pump
  Duration creep_fades{120'000};         // time constant while water flows
  Duration creep_builds{6 * 3'600'000};  // time constant while it stands
};

// The flow follows the water's viscosity and the pressure left after the feed's osmotic pressure;
// the salt diffuses at its own rate, so that a slow membrane gives saltier water.
class Membrane {
 public:
  explicit Membrane(const MembraneSettings& settings) : settings_(settings) {}

  LitresPerHour flow(bool boosted, PartsPerMillion feed, Celsius) const;
  // Water has flowed (or stood, flow 0) for a while.
  void live(Duration, LitresPerHour flow, PartsPerMillion feed);
  // What comes out at this flow; while nothing flows, what stands in the pipe.
  PartsPerMillion permeate(LitresPerHour flow, PartsPerMillion feed) const;

  const MembraneSettings& settings() const { return settings_; }
  void foul(double condition) { settings_.condition = condition; }
  void wear(double rejection) { settings_.rejection = rejection; }

 private:
  MembraneSettings settings_;
  PartsPerMillion creep_;  // salt that diffused through while the water stood
};

// Viscosity of liquid water in mPa s: Vogel's equation with constants as engineering handbooks
// give them, within 1 % from 0 to 100 degrees.
double viscosity(Celsius);

}  // namespace tidewright::rehearsal
