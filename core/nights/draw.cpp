#include "core/nights/draw.hpp"

#include <algorithm>
#include <chrono>

#include "core/nights/drawing.hpp"
#include "core/rehearsal/membrane.hpp"

namespace tidewright::nights {
namespace {

using namespace std::chrono_literals;

constexpr double wet_obeys_after_s = 0.5;
constexpr double wet_latency_s = 0.2;

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

// Habits with which a fill is no slower than the file lets expect.
void draw_credible(Habits& habits, Chance& chance) {
  habits.membrane_condition = between(chance, 0.85, 1.15);
  habits.feed_ppm = between(chance, 30, 800);
  habits.water_c = between(chance, 7, 28);
  habits.top_off_l_day = between(chance, 0, 15);
  habits.messages_lost = std::min(habits.messages_lost, 0.01);
  habits.day_longest_h = habits.lease_of_nobody = 0;
}

bool fills_by_itself(const room::Room& room) {
  const bool by_the_clock = room.purifier && room.purifier->start_hours;
  return room.vat && (room.vat->start_below || by_the_clock);
}

// The time that the whole vat takes in truth, and half as much again for pauses and rests; where
// fills begin by the hours of the day, a day more.
Duration longest_fill(const Habits& habits, const room::Room& room) {
  rehearsal::MembraneSettings settings = settings_of(habits).works.membrane;
  settings.rated = room.purifier->rated;
  const rehearsal::Membrane membrane(settings);
  const double flow =
      membrane.flow(true, PartsPerMillion{habits.feed_ppm}, Celsius{habits.water_c}).value;
  const double gain = flow - habits.top_off_l_day / 24;
  const double fill_hours = 1.5 * room.vat->capacity.value / gain;
  const double waits = room.purifier->start_hours ? 24 : 0;
  return Duration{static_cast<Duration::rep>((fill_hours + waits) * 3.6e6)};
}

// Makes what may have been silent speak, resets whatever can be latched, and starts; again when the
// off-delays are over, and once more when what was refused at first may have settled. Where a lease
// was not kept, it must pass a test.
void draw_person(Night& night, const room::Room& room) {
  add(night, "tries_instruments", night.calm_from + 5min);
  for (const Duration after : {10min, 50min, 110min}) {
    for (std::uint8_t alarm = 0; alarm < room::rule_count; ++alarm) {
      add(night, "resets", night.calm_from + after + alarm * 10s, alarm);
    }
  }
  for (const Duration after : {60min, 120min}) add(night, "asks_start", night.calm_from + after);
  // One at a time; each waits for a rest, runs for three times its lease and then for silence.
  Duration test = night.calm_from + 65min;
  for (std::size_t n = 0; n < room.actuators.size(); ++n) {
    if (!room::facts(room.actuators[n].role).makes_water) continue;
    add(night, "tests_lease", test, static_cast<std::uint8_t>(n));
    test += 25min;
  }
}

Night draw(const std::string& household, const room::Room& room, std::uint64_t seed,
           Duration lasting, std::size_t faults_most) {
  Chance chance(seed * 0x9E3779B97F4A7C15U + 1);
  Night night{.household = household, .seed = seed, .lasting = lasting, .habits = {}, .faults = {}};
  night.habits = draw_habits(chance);
  if (!room.actuators.empty() && (!fills_by_itself(room) || happens(chance, 20))) {
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
    draw_trust(night, chance, room, fault);
  }
  draw_life(night, chance, room);
  draw_runs(night, chance, room);
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

Night draw_recovery(const std::string& household, const room::Room& room, std::uint64_t seed) {
  constexpr Duration calm_from = 5h;
  Night night = draw(household, room, seed, calm_from + 2h, 3);
  Chance chance(seed + 17);
  draw_credible(night.habits, chance);
  // Nothing lasts beyond the calm, and nobody stops the fill before it.
  std::erase_if(night.faults, [&](const Fault& fault) {
    return fault.at >= calm_from - 30min || fault.kind->name == "asks_stop";
  });
  for (Fault& fault : night.faults) {
    if (fault.kind->subject == Subject::run) {
      fault.amount = std::min(fault.amount, seconds(calm_from - fault.at) / 60);
    }
    fault.lasting = std::min(fault.lasting, calm_from - 15min - fault.at);
  }
  add(night, "floor_dried", calm_from - 1min);
  night.calm_from = calm_from;
  if (happens(chance, 50)) draw_person(night, room);
  night.fills_by = calm_from + fills_begin_within + longest_fill(night.habits, room);
  night.lasting = night.fills_by + 2min;
  return night;
}

void vary(Night& night, std::uint64_t seed) {
  Chance chance(seed);
  night.seed = seed;
  // Every other one lies close by.
  const bool close = happens(chance, 50);
  const Duration moved = close ? Duration{10s} : Duration{5min};
  const Habits other = draw_habits(chance);
  for (const HabitRow& row : habits()) {
    if (!close && happens(chance, 30)) night.habits.*row.value = other.*row.value;
  }
  for (Fault& fault : night.faults) {
    fault.at = std::max<Duration>(1min, fault.at + between(chance, -moved, moved));
  }
  std::stable_sort(night.faults.begin(), night.faults.end(),
                   [](const Fault& a, const Fault& b) { return a.at < b.at; });
}

void join(Night& night, const FaultKind& kind, const FaultKind& beside, const room::Room& room,
          std::uint64_t seed) {
  Chance chance(seed);
  night.seed = seed;
  std::vector<std::size_t> moments;
  for (std::size_t n = 0; n < night.faults.size(); ++n) {
    if (night.faults[n].kind == &beside) moments.push_back(n);
  }
  if (moments.empty() || subjects(kind, room).empty()) return;
  // Just before the other, so that it begins in the same phase.
  const auto moment = static_cast<std::ptrdiff_t>(one_of(chance, moments));
  const Fault fault = draw_fault(chance, kind, room, (night.faults.begin() + moment)->at);
  if (!overlaps(night, fault)) night.faults.insert(night.faults.begin() + moment, fault);
}

Night draw_wet_under(const FaultKind* kind, const std::string& household, const room::Room& room,
                     Chance& chance) {
  constexpr Duration longest = 30min;
  Night night{.household = household, .seed = chance.bits() | 1U, .lasting = 75min};
  night.habits.begins_at_h = 10;
  night.habits.vat_filled = 0.2;
  night.habits.obeys_after_s = wet_obeys_after_s;
  night.habits.broker_latency_s = wet_latency_s;
  if (!fills_by_itself(room)) add(night, "asks_start", 1min, no_subject, 200);
  const Duration at = between(chance, 15min, 25min);
  Duration lasting{0};
  if (kind != nullptr) {
    Fault fault = draw_fault(chance, *kind, room, at);
    const auto sensor = room::find(room, room::Quantity::wetness, room::Place::floor);
    if (kind->subject == Subject::instrument && happens(chance, 70)) fault.subject = *sensor;
    fault.lasting = std::min(fault.lasting, longest);
    lasting = fault.lasting;
    night.faults.push_back(fault);
  }
  add(night, "spill", at + between(chance, -3min, lasting + 3min), no_subject, 5);
  return night;
}

}  // namespace tidewright::nights
