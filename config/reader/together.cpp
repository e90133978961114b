#include <fmt/format.h>

#include "config/reader/draft.hpp"

namespace tidewright::config {
namespace {

void check_sizes(Draft& draft) {
  const auto too_many = [&](std::size_t count, std::size_t most, std::string_view what, Spot at) {
    if (count <= most) return;
    draft.problems.add(at, fmt::format("there are {} {}; expected at most {}", count, what, most),
                       "One daemon looks after one room of this size.");
  };
  if (draft.household.room.instruments.size() > room::instruments_max) {
    too_many(draft.household.room.instruments.size(), room::instruments_max, "instruments",
             draft.instruments[room::instruments_max]->at());
  }
  if (draft.actuators.size() > room::actuators_max) {
    too_many(draft.actuators.size(), room::actuators_max, "actuators",
             draft.actuators[room::actuators_max].at());
  }
}

bool makes_water(const Draft& draft, std::size_t actuator) {
  return facts(draft.household.room.actuators[actuator].role).makes_water;
}

// A pump that no purifier names would never be switched on.
void check_driven(Draft& draft) {
  if (draft.purifier && draft.purifier->mentions("driven_by")) return;
  for (std::size_t i = 0; i < draft.actuators.size(); ++i) {
    if (!makes_water(draft, i)) continue;
    const Section& first = draft.actuators[i];
    return draft.problems.add(
        first.at(),
        fmt::format("nothing says what {} drives; expected `driven_by = \"{}\"` in [purifier]",
                    first.title(), first.id()),
        "An actuator that is not named there is never switched on.");
  }
}

struct Unattended {
  bool by_level = false;  // below start_below
  bool by_clock = false;  // in start_hours, with a float switch
};

// How the file asks for fills that nobody watches.
Unattended unattended(const Draft& draft) {
  const Section* vat = draft.vats.empty() ? nullptr : &draft.vats.front();
  const Section* purifier = draft.purifier ? &*draft.purifier : nullptr;
  if (purifier == nullptr || !purifier->mentions("driven_by")) return {};
  const bool by_level = vat != nullptr && vat->mentions("start_below");
  return {.by_level = by_level, .by_clock = !by_level && purifier->mentions("start_hours")};
}

void check_start(Draft& draft) {
  const Section* vat = draft.vats.empty() ? nullptr : &draft.vats.front();
  const bool starts = vat != nullptr && vat->mentions("start_below");
  if (starts) {
    needs(draft, *vat, "start_below", "stop_at",
          "A fill that begins by itself must know where to end.");
  }
  if (starts && !(draft.purifier && draft.purifier->mentions("driven_by"))) {
    draft.problems.add(
        vat->at("start_below"),
        "`start_below` is given, but no purifier is switched by the daemon; expected "
        "`driven_by` in [purifier]",
        "Without it nothing can be started: take start_below out, and use `low` to be "
        "told.");
  }
  if (unattended(draft).by_clock && (vat == nullptr || !vat->mentions("full"))) {
    draft.problems.add(draft.purifier->at("start_hours"),
                       "`start_hours` is given, but nothing says when the vat is full; expected "
                       "`full` in [vat.<id>], or `start_below`, `stop_at` and `level`",
                       "A fill that begins by itself must know where to end.");
  }
}

Spot where_it_starts(const Draft& draft) {
  return unattended(draft).by_level ? draft.vats.front().at("start_below")
                                    : draft.purifier->at("start_hours");
}

// Fills that nobody watches need a leak sensor, or the household's word; and a lease.
void check_unattended(Draft& draft) {
  const bool accepted = draft.file && draft.file->mentions("without_leak_sensor");
  const auto [by_level, by_clock] = unattended(draft);
  if (accepted && !draft.leaks.empty()) {
    draft.problems.add(
        draft.file->at("without_leak_sensor"),
        fmt::format("`without_leak_sensor` is given, but there is {}; expected one of "
                    "them",
                    draft.leaks.front().title()),
        "Take without_leak_sensor out: the sensor is there.");
  }
  if (!by_level && !by_clock) return;
  if (draft.leaks.empty() && !accepted) {
    draft.problems.add(where_it_starts(draft),
                       "fills begin by themselves, but there is no leak sensor; expected a section "
                       "[leak.<id>]",
                       "If you want it so, write at the top of the file: without_leak_sensor = \"I "
                       "accept that nothing here notices water on the floor\"");
  }
  for (std::size_t i = 0; i < draft.actuators.size(); ++i) {
    const Section& actuator = draft.actuators[i];
    if (actuator.text("lease_kept_by") != "nobody" || !makes_water(draft, i)) continue;
    draft.problems.add(actuator.at("lease_kept_by"),
                       fmt::format("`lease_kept_by` is \"nobody\" in {}, but fills begin by "
                                   "themselves in line {}; expected somebody who keeps the lease",
                                   actuator.title(), where_it_starts(draft).line),
                       "Set the plug's own auto-off and write \"plug\"; or take start_below and "
                       "start_hours out, and start each fill yourself.");
  }
}

}  // namespace

void check_together(Draft& draft) {
  check_marks(draft);
  check_topics(draft);
  check_sizes(draft);
  check_driven(draft);
  check_start(draft);
  check_unattended(draft);
}

}  // namespace tidewright::config
