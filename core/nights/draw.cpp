#include "core/nights/draw.hpp"

#include <algorithm>
#include <chrono>

#include "core/nights/fault.hpp"
#include "core/rehearsal/chance.hpp"

namespace tidewright::nights {
namespace {

using namespace std::chrono_literals;
using rehearsal::Chance;

constexpr Duration quiet_at_first = 12min;

double between(Chance& chance, double least, double most) {
  return least + (most - least) * chance.uniform();
}

Duration between(Chance& chance, Duration least, Duration most) {
  const double drawn =
      between(chance, static_cast<double>(least.count()), static_cast<double>(most.count()));
  return Duration{static_cast<Duration::rep>(drawn)};
}

template <class T>
const T& one_of(Chance& chance, const std::vector<T>& choice) {
  return choice[chance.bits() % choice.size()];
}

// Of a hundred.
bool happens(Chance& chance, double percent) { return chance.uniform() * 100 < percent; }

// Habits that most rooms do not have are kept at their default in most nights.
Habits draw_habits(Chance& chance) {
  Habits drawn;
  for (const HabitRow& row : habits()) {
    drawn.*row.value = between(chance, row.least, row.most);
  }
  const Habits usual;
  if (happens(chance, 50)) drawn.vat_filled = between(chance, 0.05, 0.38);
  if (happens(chance, 50)) drawn.messages_lost = 0;
  if (happens(chance, 70)) drawn.feedback_every_s = 0;
  if (happens(chance, 85)) drawn.day_longest_h = usual.day_longest_h;
  drawn.instruments_retain = happens(chance, 50) ? 1 : 0;
  drawn.instruments_date = happens(chance, 25) ? 1 : 0;
  drawn.lease_of_nobody = happens(chance, 4) ? 1 : 0;
  return drawn;
}

Fault draw_fault(Chance& chance, const FaultKind& kind, const room::Room& room, Duration at) {
  return {.kind = &kind,
          .at = at,
          .lasting = between(chance, kind.shortest, kind.longest),
          .subject = one_of(chance, subjects(kind, room)),
          .amount = between(chance, kind.least, kind.most)};
}

void add(Night& night, const char* name, Duration at, std::uint8_t subject = no_subject,
         double amount = 0) {
  night.faults.push_back(
      {.kind = fault_kind_named(name), .at = at, .subject = subject, .amount = amount});
}

// Two of a kind at one subject would end each other.
bool overlaps(const Night& night, const Fault& fault) {
  return std::any_of(night.faults.begin(), night.faults.end(), [&](const Fault& other) {
    return other.kind == fault.kind && other.subject == fault.subject &&
           other.at <= fault.at + fault.lasting && fault.at <= other.at + other.lasting;
  });
}

std::vector<const FaultKind*> real_faults(const room::Room& room) {
  std::vector<const FaultKind*> kinds;
  for (const FaultKind* kind : fault_kinds()) {
    if (kind->number > 0 && !subjects(*kind, room).empty()) kinds.push_back(kind);
  }
  return kinds;
}

// Anything that may happen to water, and what people do, in no good order.
void draw_life(Night& night, Chance& chance, const room::Room& room) {
  const Duration latest = night.lasting - 1h;
  for (const FaultKind* kind : fault_kinds()) {
    if (kind->number > 0 || subjects(*kind, room).empty() || !happens(chance, 6)) continue;
    night.faults.push_back(
        draw_fault(chance, *kind, room, between(chance, quiet_at_first, latest)));
  }
}

// Water on the floor about when something else is wrong; then somebody dries it, or resets too
// soon.
void draw_leak(Night& night, Chance& chance, Duration about) {
  const Duration at = std::max<Duration>(quiet_at_first, about + between(chance, -2min, 20min));
  add(night, "spill", at, no_subject, between(chance, 0.1, 20));
  const auto leak = static_cast<std::uint8_t>(room::RuleId::leak);
  if (happens(chance, 40)) add(night, "resets", at + between(chance, 10s, 40min), leak);
  if (happens(chance, 20)) add(night, "acknowledges", at + between(chance, 10s, 40min), leak);
  if (happens(chance, 10)) {
    add(night, "shelves", at + between(chance, 10s, 40min), leak, between(chance, 5, 120));
  }
  if (happens(chance, 75)) {
    const Duration dried = at + between(chance, 30s, 90min);
    add(night, "floor_dried", dried);
    if (happens(chance, 70)) {
      const Duration reset = dried + between(chance, 1min, 30min);
      add(night, "resets", reset, leak);
      add(night, "asks_start", reset + between(chance, 10s, 10min), no_subject,
          between(chance, 0, 120));
    }
  }
}

Night draw(const std::string& household, const room::Room& room, std::uint64_t seed,
           Duration lasting, std::size_t faults_most) {
  Chance chance(seed * 0x9E3779B97F4A7C15U + 1);
  Night night{.household = household, .seed = seed, .lasting = lasting, .habits = {}, .faults = {}};
  night.habits = draw_habits(chance);
  const bool fills_by_itself = room.vat && (room.vat->start_below || room.purifier->start_hours);
  if (!room.actuators.empty() && (!fills_by_itself || happens(chance, 20))) {
    add(night, "asks_start", between(chance, 1min, 10min), no_subject, between(chance, 30, 200));
  }
  const auto kinds = real_faults(room);
  const std::size_t wanted = 1 + chance.bits() % faults_most;
  for (std::size_t n = 0; n < wanted; ++n) {
    const Duration at = between(chance, quiet_at_first, lasting - 2h);
    const Fault fault = draw_fault(chance, *one_of(chance, kinds), room, at);
    if (overlaps(night, fault)) continue;
    night.faults.push_back(fault);
    if (happens(chance, 50)) draw_leak(night, chance, at);
  }
  draw_life(night, chance, room);
  std::stable_sort(night.faults.begin(), night.faults.end(),
                   [](const Fault& a, const Fault& b) { return a.at < b.at; });
  return night;
}

}  // namespace

Night draw_incident(const std::string& household, const room::Room& room, std::uint64_t seed) {
  Chance chance(seed);
  return draw(household, room, seed, between(chance, 6h, 8h), 3);
}

Night draw_day(const std::string& household, const room::Room& room, std::uint64_t seed) {
  return draw(household, room, seed, 24h, 6);
}

}  // namespace tidewright::nights
