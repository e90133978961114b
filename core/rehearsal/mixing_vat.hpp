// The vat in which salt water is mixed: what runs in and out, and how warm a heater makes it.
#pragma once

#include "core/base/instant.hpp"
#include "core/base/units.hpp"
#include "core/rehearsal/vat.hpp"

namespace tidewright::rehearsal {

struct MixingSettings {
  double begins_filled = 0.5;  // of its capacity
  Watts heater{300};
  double heater_at = 0.15;         // of its capacity: with less water the heater stands bare
  Duration cools{12 * 3'600'000};  // time constant towards the room (no source)
};

class MixingVat {
 public:
  MixingVat(Litres capacity, const MixingSettings&, Celsius);

  // Returns what runs over the brim.
  Litres pour(Litres, Celsius);
  Litres draw(Litres water) { return vat_.draw(water); }
  void live(Duration, bool heated, Celsius room);

  Litres holding() const { return vat_.holding(); }
  Litres capacity() const { return vat_.capacity(); }
  Celsius temperature() const { return temperature_; }
  // The water stands below the heater, which would burn.
  bool heater_is_bare() const { return holding() < capacity() * settings_.heater_at; }

 private:
  Vat vat_;
  MixingSettings settings_;
  Celsius temperature_;
};

}  // namespace tidewright::rehearsal
