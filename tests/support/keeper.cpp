#include "tests/support/keeper.hpp"

#include <memory>

namespace tidewright::support {

Person daily_person(Duration run) {
  auto last = std::make_shared<Instant>(curtain - std::chrono::hours{6});  // so: at 18 o'clock
  return [run, last](Theatre& theatre) {
    if (theatre.now() - *last < std::chrono::hours{24}) return;
    *last = theatre.now();
    const rehearsal::Vat& vat = theatre.pretend().works().vat();
    if (vat.holding() > vat.capacity() * 0.75) return;
    Ask ask;
    ask.kind = AskKind::start;
    ask.lasting = run;
    ask.who = Name("ann");
    theatre.feed({theatre.now(), ask});
  };
}

Litres made_by_perfect_keeper(const room::Room& room, const rehearsal::Settings& settings,
                              std::uint64_t seed, Duration lasting) {
  rehearsal::PretendRoom pretend(room, settings, seed, curtain);
  const rehearsal::Vat& vat = pretend.works().vat();
  const bool marked = room.vat && room.vat->start_below && room.vat->stop_at;
  const Litres start = marked ? *room.vat->start_below : vat.capacity() * 0.75;
  const Litres stop = marked ? *room.vat->stop_at : vat.capacity() * settings.float_switch_at;
  const Instant end = curtain + lasting;
  bool filling = false;
  std::vector<Event> said;
  while (pretend.now() < end) {
    if (vat.holding() < start) filling = true;
    if (vat.holding() >= stop) filling = false;
    for (std::size_t i = 0; i < room.actuators.size(); ++i) {
      if (filling != pretend.plug(static_cast<room::ActuatorIndex>(i)).on() || filling) {
        pretend.obey({static_cast<room::ActuatorIndex>(i), filling, Duration{0}});
      }
    }
    const Instant until = std::min(end, pretend.now() + std::chrono::seconds{30});
    while (pretend.now() < until) {
      said.clear();
      pretend.advance(until, said);
    }
  }
  return pretend.works().tally().made;
}

}  // namespace tidewright::support
