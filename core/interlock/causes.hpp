// The causes of the matrix that are no rule's finding: permissives and limits.
#pragma once

#include <optional>

#include "core/base/reason.hpp"
#include "core/picture/picture.hpp"

namespace tidewright::interlock {

using Cause = std::optional<Reason>;

// Of the whole room.
Cause link_is_down(const picture::Picture&, const state::Findings&);
Cause is_stopping(const picture::Picture&, const state::Findings&);
Cause high_high_not_good(const picture::Picture&, const state::Findings&);
Cause level_not_good(const picture::Picture&, const state::Findings&);
Cause float_not_good(const picture::Picture&, const state::Findings&);
Cause vat_at_stop(const picture::Picture&, const state::Findings&);
Cause concentrate_full(const picture::Picture&, const state::Findings&);
Cause mixing_vat_full(const picture::Picture&, const state::Findings&);
Cause leak_not_seen(const picture::Picture&, const state::Findings&);
Cause unattended_without_leak_sensor(const picture::Picture&, const state::Findings&);
Cause unattended_without_lease(const picture::Picture&, const state::Findings&);
Cause unattended_without_kept_lease(const picture::Picture&, const state::Findings&);
Cause settling_after_start(const picture::Picture&, const state::Findings&);
Cause frost(const picture::Picture&, const state::Findings&);

// Of one actuator.
Cause disobedience(const picture::Picture&, const state::Findings&, room::ActuatorIndex);
Cause product_over_stop(const picture::Picture&, const state::Findings&, room::ActuatorIndex);
Cause level_low(const picture::Picture&, const state::Findings&, room::ActuatorIndex);
Cause mixing_level_not_good(const picture::Picture&, const state::Findings&, room::ActuatorIndex);
Cause ran_too_long(const picture::Picture&, const state::Findings&, room::ActuatorIndex);

// How long nothing starts after a run that ended without notice: a power cut seldom comes alone.
inline constexpr Duration wait_after_unclean_start = std::chrono::minutes{5};

}  // namespace tidewright::interlock
