// One instrument of the household: what it measures, where, and what may be believed of it.
// Filled by config/reader, read by signal/. Values are in the quantity's own unit, converted
// once at the door (daemon/intake).
#pragma once

#include <algorithm>
#include <optional>
#include <string>

#include "core/base/instant.hpp"
#include "core/base/reason.hpp"

namespace tidewright::room {

enum class Quantity : std::uint8_t {
  wetness,           // 0 dry, 1 wet
  level,             // litres in a vat
  float_switch,      // 0 not reached, 1 reached
  dissolved_solids,  // ppm
  temperature,       // degrees Celsius
  power,             // watts
  feedback,          // 0 off, 1 on: what an actuator says of itself
  flow,              // litres per hour
  water_count,       // litres that a water meter has counted in all
  pressure,          // bars above the air
};

enum class Place : std::uint8_t {
  floor,          // wetness
  vat,            // level, and the float switch that says "full"
  vat_high_high,  // the float switch above every other mark
  feed,
  permeate,
  lead_outlet,
  product,
  concentrate,  // solids of what the membrane refuses; the float switch of its vat
  mixing_vat,   // level and temperature
  room,
  plug,  // power and feedback of an actuator
};

struct Instrument {
  std::string id;  // `[a-z0-9_-]{1,64}`, unique in the room
  Quantity quantity{};
  Place place{};
  std::uint8_t subject = 0;  // which vat or actuator it belongs to
  std::string where;         // in a person's words: "the floor by the drain"

  Duration reports_every{60'000};
  bool on_change = false;  // speaks on change only; then reports_every is its longest silence
  bool has_availability = false;  // its own online/offline topic is known

  double gross_low = 0;  // outside: no reading at all
  double gross_high = 0;
  double plausible_low = 0;  // outside: a reading, but doubtful
  double plausible_high = 0;
  double step = 0;            // one step of its display
  double per_second_max = 0;  // fastest credible change; 0 = not judged
  int median_of = 1;          // 3 or 5: what is believed is the median of so many readings
  Duration flat_after{0};     // the same value for so long, while change is expected, is doubtful;
                              // 0 = not judged
  std::uint8_t twin_of = no_subject;  // the other instrument of the same quantity and place
  double agrees_within = 0;           // what twins say may differ by this,
  double agrees_share = 0;            //   or by this share of what they say
  double wraps_at = 0;                // of a water count: there it begins anew at 0; 0 = nowhere
  // What it says when it has just got its power and has measured nothing yet.
  std::optional<double> power_up = std::nullopt;
};

// What a person proves every few months: by a wet cloth, or by lifting the float.
inline bool is_tried_by_hand(const Instrument& i) {
  return i.quantity == Quantity::wetness ||
         (i.quantity == Quantity::float_switch && i.place == Place::vat_high_high);
}

// How long silence is normal. Three missed reports, never under a minute.
inline Duration stale_after(const Instrument& i) {
  if (i.on_change) return i.reports_every;
  return std::max<Duration>(3 * i.reports_every, std::chrono::seconds{60});
}

}  // namespace tidewright::room
