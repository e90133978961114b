#include "core/nights/worst.hpp"

#include <algorithm>
#include <chrono>

#include "core/nights/draw.hpp"
#include "core/nights/run.hpp"
#include "core/rehearsal/chance.hpp"

namespace tidewright::nights {
namespace {

using namespace std::chrono_literals;

// A plug and a broker as they are in these nights (draw.cpp), a pass of step, and a slice of the
// pretend room's physics.
constexpr Duration on_the_way = 8s;

// How much later than its interval a word may come.
constexpr double late_share = 1.03;

struct Times {
  Duration word{0};     // until a sensor speaks that can
  Duration silence{0};  // until the silence of one counts
  Duration travel{0};   // until the slowest valve is shut
  Duration lease{0};    // until a relay opens by itself
};

Times times_of(const room::Room& room) {
  Times times{.word = Duration::max(), .silence = Duration::max()};
  for (const room::Instrument& instrument : room.instruments) {
    if (instrument.quantity != room::Quantity::wetness) continue;
    const auto every = static_cast<double>(instrument.reports_every.count());
    const Duration word =
        instrument.on_change ? 5s : Duration{static_cast<Duration::rep>(every * late_share)};
    times.word = std::min(times.word, word);
    times.silence = std::min(times.silence, room::stale_after(instrument));
  }
  for (const room::Actuator& actuator : room.actuators) {
    times.travel = std::max(times.travel, actuator.travel);
    times.lease = std::max(times.lease, actuator.lease);
  }
  return times;
}

Duration of_seconds(double s) { return Duration{static_cast<Duration::rep>(s * 1000)}; }

}  // namespace

std::optional<Duration> worst_computed(const room::Room& room, const FaultKind* kind) {
  const Times times = times_of(room);
  if (times.word == Duration::max()) return std::nullopt;
  const auto sensors = std::count_if(
      room.instruments.begin(), room.instruments.end(),
      [](const room::Instrument& i) { return i.quantity == room::Quantity::wetness; });
  const Duration shut = on_the_way + times.travel;
  const Duration plain = times.word + shut;
  if (kind == nullptr) return plain;
  const Duration delay = kind->excuse == Excuse::delays ? of_seconds(kind->most) : Duration{0};
  switch (kind->stops) {
    case Stops::nothing:
      return plain + delay;
    case Stops::words:
      return times.silence + shut + delay;
    case Stops::commands:
      return times.word + times.lease + shut + delay;
    case Stops::both:
      return times.silence + times.lease + shut + delay;
    case Stops::one_sensor:
      if (kind->excuse == Excuse::deceives && sensors < 2) return std::nullopt;
      return times.silence + shut;
    case Stops::one_relay:
      return std::nullopt;
  }
  return std::nullopt;
}

std::vector<Worst> worst_seen(const std::string& household, const room::Room& room,
                              std::uint64_t seed, std::size_t nights) {
  if (!room::driving(room) || !worst_computed(room, nullptr)) return {};
  std::vector<const FaultKind*> kinds{nullptr};
  for (const FaultKind* kind : fault_kinds()) {
    if (kind->number > 0 && !subjects(*kind, room).empty()) kinds.push_back(kind);
  }
  std::vector<Worst> table;
  rehearsal::Chance chance(seed);
  for (const FaultKind* kind : kinds) {
    Worst row{.kind = kind, .computed = worst_computed(room, kind), .seen = {}, .nights = nights};
    for (std::size_t n = 0; n < nights; ++n) {
      const Night night = draw_wet_under(kind, household, room, chance);
      row.seen = std::max(row.seen, Run(room, night).live().wet_to_off);
    }
    table.push_back(row);
  }
  return table;
}

}  // namespace tidewright::nights
