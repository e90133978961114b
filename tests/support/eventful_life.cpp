#include "tests/support/eventful_life.hpp"

#include <fmt/format.h>

#include <deque>
#include <iterator>
#include <variant>

#include "core/rehearsal/chance.hpp"
#include "core/rehearsal/pretend_room.hpp"
#include "core/step.hpp"
#include "daemon/store/line.hpp"
#include "daemon/store/names.hpp"

namespace tidewright::support {
namespace {

using rehearsal::Chance;

constexpr Instant begin{std::chrono::hours{24 * 20'000}};

template <class Enum>
Enum any_of(Chance& chance, unsigned count) {
  return static_cast<Enum>(chance.bits() % count);
}

class Life {
 public:
  Life(const room::Room& room, std::uint64_t seed)
      : room_(room), chance_(seed), pretend_(room, {}, seed, begin) {
    lines_.push_back(store::print(0, begin, store::StateText{.text = {}, .fresh = true}));
    start(true);
  }

  void live() {
    std::vector<Event> said;
    pretend_.advance(std::min(wake_, now() + std::chrono::minutes{1}), said);
    for (const Event& event : said) {
      if (link_) feed(event);
    }
    if (now() >= wake_) feed({now(), Tick{}});
    if (chance_.uniform() < 0.03) disturb();
  }

  Instant now() const { return pretend_.now(); }
  std::vector<std::string>& lines() { return lines_; }

 private:
  void start(bool clean) {
    feed({now(), Started{clean, Duration{1000}}});
    feed({now(), ClockSet{{.ahead = Duration{5}, .zone = std::chrono::minutes{120}}}});
    set_link(true);
  }

  void set_link(bool up) {
    link_ = up;
    feed({now(), Link{up}});
  }

  void disturb() {
    const double kind = chance_.uniform();
    if (kind < 0.02) {
      pretend_.works().spill(Litres{1});
    } else if (kind < 0.10) {
      pretend_.works().dry_floor();
    } else if (kind < 0.16) {
      set_link(!link_);
    } else if (kind < 0.18) {
      start(chance_.uniform() < 0.5);
    } else if (kind < 0.40) {
      feed({now(), Refusal{instrument()}});
    } else if (kind < 0.60) {
      feed({now(), Reading{.instrument = instrument(),
                           .value = chance_.normal() * 50,
                           .arrival = any_of<Arrival>(chance_, 3),
                           .taken = now() - Duration{5}}});
    } else if (kind < 0.65) {
      feed({now(), Availability{instrument(), chance_.uniform() < 0.7}});
    } else if (kind < 0.70) {
      feed({now(), Recorded{chance_.uniform() < 0.8}});
    } else if (kind < 0.75) {
      feed({now(), Tell{.kind = any_of<TellKind>(chance_, 6),
                        .ticket = 1,
                        .instrument = instrument(),
                        .value = chance_.uniform(),
                        .who = Name{"ben"},
                        .supply = 0}});
    } else {
      ask();
    }
  }

  void ask() {
    Ask ask{.kind = any_of<AskKind>(chance_, 12),
            .ticket = 2,
            .alarm = any_of<room::RuleId>(chance_, room::rule_count),
            .cause = any_of<room::CauseId>(chance_, room::cause_count),
            .occurrence = 0,
            .actuator = chance_.uniform() < 0.5 ? no_subject : room::ActuatorIndex{0},
            .lasting = std::chrono::minutes{chance_.bits() % 120},
            .token = static_cast<std::uint32_t>(chance_.bits() % 3),
            .who = Name{"ann"}};
    feed({now(), ask});
    if (ask.kind != AskKind::reset && ask.kind != AskKind::bypass) return;
    ask.kind = ask.kind == AskKind::reset ? AskKind::confirm : AskKind::confirm_bypass;
    feed({now(), ask});
  }

  room::InstrumentIndex instrument() {
    return static_cast<room::InstrumentIndex>(chance_.bits() % room_.instruments.size());
  }

  void feed(const Event& event) {
    lines_.push_back(store::print(room_, lines_.size(), event, {}));
    wake_ = step(room_, state_, event, effects_);
    for (const Effect& effect : effects_) {
      const auto* command = std::get_if<Command>(&effect);
      if (command != nullptr && link_) pretend_.obey(*command);
    }
  }

  const room::Room& room_;
  Chance chance_;
  rehearsal::PretendRoom pretend_;
  std::vector<std::string> lines_;
  State state_;
  Effects effects_;
  Instant wake_ = never;
  bool link_ = false;
};

struct EffectText {
  std::string& out;
  void add(const char* kind, auto... parts) const {
    out += kind;
    ((out += fmt::format(" {}", parts)), ...);
    out += '\n';
  }
  std::string reason(const Reason& why) const {
    return fmt::format("{} {} {} {} {}", store::name(why.why), why.subject, why.numbers[0],
                       why.numbers[1], why.numbers[2]);
  }
  void operator()(const Command& it) const { add("command", it.actuator, it.on, it.life.count()); }
  void operator()(const Persist&) const { add("persist"); }
  void operator()(const Announcement& it) const {
    add("announce", store::name(it.alarm), it.occurrence, static_cast<int>(it.event),
        reason(it.why));
  }
  void operator()(const Answer& it) const { add("answer", it.ticket, it.done, reason(it.why)); }
};

}  // namespace

std::vector<std::string> eventful_life(const room::Room& room, std::uint64_t seed,
                                       std::size_t events) {
  Life life{room, seed};
  while (life.lines().size() <= events) life.live();
  life.lines().resize(events + 1);
  return std::move(life.lines());
}

std::string decided(const State& state, const Effects& effects) {
  std::string text;
  const EffectText print{text};
  for (const Effect& effect : effects) std::visit(print, effect);
  for (const state::Drive& drive : state.drives) print.add("drive", print.reason(drive.why));
  for (const state::Latch& latch : state.latches.items) print.add("latch", latch.set);
  return text;
}

}  // namespace tidewright::support
