#include <fmt/format.h>

#include "config/reader/instruments.hpp"

namespace tidewright::config {
namespace {

room::LeaseKind lease_kind(const std::string& word) {
  if (word == "plug") return room::LeaseKind::plug;
  if (word == "plug_fixed") return room::LeaseKind::plug_fixed;
  if (word == "device") return room::LeaseKind::device;
  if (word == "hub") return room::LeaseKind::hub;
  return room::LeaseKind::none;
}

room::Role role_of(const Section& from) {
  for (std::size_t i = 0; i < room::role_count; ++i) {
    if (from.text("role") == room::role_facts[i].words) return static_cast<room::Role>(i);
  }
  return room::Role::booster_pump;
}

room::Actuator actuator_of(const Section& from) {
  room::Actuator actuator;
  actuator.id = from.id();
  actuator.role = role_of(from);
  actuator.words = from.told("words") != nullptr ? from.text("words") : "the " + from.text("role");
  actuator.lease_kind = lease_kind(from.text("lease_kept_by"));
  actuator.lease =
      from.told("lease") != nullptr ? duration(from, "lease") : facts(actuator.role).lease;
  actuator.travel = duration(from, "travel");
  actuator.run_longest = duration(from, "run_longest");
  actuator.on_per_day_longest = duration(from, "on_per_day_longest");
  actuator.off_shortest = duration(from, "off_shortest");
  actuator.starts_per_hour_max = static_cast<int>(from.number("starts_per_hour_max"));
  actuator.idle_below = {from.number("idle_below")};
  if (from.told("flow") != nullptr) actuator.flow = LitresPerHour{from.number("flow")};
  return actuator;
}

// Whoever keeps the lease needs what it is kept by.
void check_lease(Draft& draft, const Section& from, const room::Actuator& actuator) {
  const bool sends_seconds = from.text("on").find("{seconds}") != std::string::npos;
  if (actuator.lease_kind == room::LeaseKind::device && !sends_seconds) {
    draft.problems.add(from.at("lease_kept_by"),
                       fmt::format("`lease_kept_by` is \"device\", but `on` of {} does not tell it "
                                   "how long; expected {{seconds}} in `on`",
                                   from.title()),
                       "The device counts down the seconds that come with each ON.");
  }
  const bool by_hub = from.text("lease_kept_by") == "hub";
  if (by_hub != from.mentions("automation") && from.value("lease_kept_by") != nullptr) {
    draft.problems.add(
        from.at(by_hub ? "lease_kept_by" : "automation"),
        fmt::format("`lease_kept_by` is \"{}\", but `automation` is {} in {}; "
                    "expected both or neither",
                    from.text("lease_kept_by"), by_hub ? "missing" : "given", from.title()),
        "Name the hub's automation, so that nobody deletes it by mistake.");
  }
  if (from.text("lease_kept_by") == "nobody" && from.told("lease") != nullptr) {
    draft.problems.add(from.at("lease"),
                       fmt::format("`lease` is \"{}\", but nobody keeps it in {}; expected no "
                                   "`lease`, or somebody in `lease_kept_by`",
                                   from.text("lease"), from.title()),
                       "Nothing switches it off when the daemon falls silent.");
  }
}

// Two commands that a device cannot tell apart would never switch it off.
void check_words(Draft& draft, const Section& from) {
  if (from.text("on") != from.text("off") || from.text("on").empty()) return;
  draft.problems.add(from.at(from.told("off") != nullptr ? "off" : "on"),
                     fmt::format("\"{}\" stands for both `on` and `off` in {}; expected two words",
                                 from.text("on"), from.title()),
                     "Look at what the device really takes in both cases.");
}

// At most one of each role: the interlock cuts all of them, but a purifier has one of each.
void check_roles(Draft& draft) {
  for (std::size_t i = 0; i < draft.actuators.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const Section& later = draft.actuators[i];
      const Section& first = draft.actuators[j];
      if (later.text("role") != first.text("role") || later.text("role").empty()) continue;
      draft.problems.add(later.at(),
                         fmt::format("{} is a second {}, after {}; expected one of each role",
                                     later.title(), later.text("role"), first.title()),
                         "`role` says what it drives; without it, it is the booster pump.");
      break;
    }
  }
}

// Out of the water a heater burns. Only a gauge shows that it is covered.
void check_heater(Draft& draft) {
  for (const Section& actuator : draft.actuators) {
    if (actuator.text("role") != "heater") continue;
    for (const std::string_view key : {"level", "low"}) {
      if (draft.mixing_vat && draft.mixing_vat->mentions(key)) continue;
      draft.problems.add(actuator.at("role"),
                         fmt::format("{} is a heater, but there is no `{}` in [mixing_vat]; "
                                     "expected a gauge and the mark under which it is off",
                                     actuator.title(), key),
                         "A heater out of the water burns.");
      break;
    }
  }
}

}  // namespace

void read_actuators(Draft& draft) {
  for (const Section& from : draft.actuators) {
    const auto index = static_cast<std::uint8_t>(draft.household.room.actuators.size());
    room::Actuator actuator = actuator_of(from);
    check_lease(draft, from, actuator);
    check_words(draft, from);
    const auto plug = [&](const char* key, room::Quantity quantity) {
      const Section* table = from.table(key);
      if (table == nullptr) return;
      add_instrument(draft, *table,
                     {.quantity = quantity,
                      .place = room::Place::plug,
                      .subject = index,
                      .id = fmt::format("{}_{}", actuator.id, key),
                      .where = "the plug of " + actuator.words});
    };
    plug("feedback", room::Quantity::feedback);
    plug("power", room::Quantity::power);
    draft.household.outlets.push_back({.topic = from.text("command"),
                                       .on = from.text("on"),
                                       .off = from.text("off"),
                                       .automation = from.text("automation")});
    draft.household.room.actuators.push_back(std::move(actuator));
  }
  check_roles(draft);
  check_heater(draft);
}

}  // namespace tidewright::config
