// The words under which enumerators are written to the disk. They outlive the program's versions:
// an enumerator may move, its word stays.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

#include "core/base/quality.hpp"
#include "core/base/reason.hpp"
#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/room/rule.hpp"
#include "core/state/alarm.hpp"
#include "core/state/lease_test.hpp"
#include "core/state/make_water.hpp"

namespace tidewright::store {

// Empty for a value that is no enumerator.
std::string_view name(Quality);
std::string_view name(DeviceStatus);
std::string_view name(Why);
std::string_view name(state::Suppression);
std::string_view name(Announced);
std::string_view name(state::Demand);
std::string_view name(state::LeasePhase);
std::string_view name(Arrival);
std::string_view name(AskKind);
std::string_view name(TellKind);
std::string_view name(room::RuleId);

// The enumerator of that word; none if there is no such word.
template <class Enum>
std::optional<Enum> named(std::string_view word) {
  for (unsigned value = 0; value <= UINT8_MAX; ++value) {
    const auto enumerator = static_cast<Enum>(value);
    if (!word.empty() && name(enumerator) == word) return enumerator;
  }
  return std::nullopt;
}

// What the `subject` of a reason points at.
enum class Subject : std::uint8_t { nothing, instrument, actuator, supply };
Subject subject_of(Why);

}  // namespace tidewright::store
