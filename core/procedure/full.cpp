#include "core/procedure/full.hpp"

#include "core/base/mutant.hpp"

namespace tidewright::procedure {
namespace {

std::optional<Reason> full_by_float_valve(const picture::Picture& picture) {
  if (!picture.working || !picture.level || !picture.room.vat->stop_at) return std::nullopt;
  const room::ActuatorIndex driving = *picture.driving;
  // A plug that has just let go may tell its power before it tells that it is OFF.
  const state::Working& pump = picture.ledger.working[driving];
  if (picture.now - pump.turning_since < room::feedback_due(picture.room, driving)) {
    return std::nullopt;
  }
  const auto watts = picture::power_at_work(picture, driving);
  if (!watts || *watts >= picture.room.actuators[driving].idle_below ||
      *picture.level < *picture.room.vat->stop_at * room::float_closes_from) {
    return std::nullopt;
  }
  return Reason{Why::full_by_float,
                driving,
                {static_cast<float>(watts->value), static_cast<float>(picture.level->value)}};
}

}  // namespace

std::optional<Reason> full(const picture::Picture& picture) {
  if (!picture.room.vat) return std::nullopt;
  const auto& stop_at = picture.room.vat->stop_at;
  const bool at_stop = picture.level && stop_at && *picture.level >= *stop_at;
  if (at_stop && !mutant(Mutant::level_at_stop_ignored)) {
    return Reason{Why::reached_stop,
                  no_subject,
                  {static_cast<float>(picture.level->value), static_cast<float>(stop_at->value),
                   static_cast<float>(seconds(picture.ledger.fill.worked) / 60)}};
  }
  if (picture.float_full) return Reason{Why::float_full, *picture.float_full, {}};
  return full_by_float_valve(picture);
}

}  // namespace tidewright::procedure
