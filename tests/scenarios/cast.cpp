#include "tests/scenarios/cast.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <charconv>
#include <map>
#include <stdexcept>
#include <utility>

#include "core/alarm/alarm_state.hpp"
#include "core/rehearsal/happening.hpp"
#include "core/rules/catalogue.hpp"
#include "tests/support/rooms.hpp"

namespace tidewright::scenarios {
namespace {

using room::RuleId;
using support::Theatre;

constexpr std::uint32_t token = 4711;

double number_of(std::string_view word) {
  double number = 0;
  const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), number);
  if (error != std::errc{} || end == word.data()) {
    throw std::runtime_error("not a number: " + std::string(word));
  }
  return number;
}

// What follows `before`, if the words begin with it.
std::optional<std::string> after(const std::string& words, std::string_view before) {
  if (!words.starts_with(before)) return std::nullopt;
  return words.substr(before.size());
}

std::pair<std::string, std::string> split(const std::string& words) {
  const std::size_t space = words.find(' ');
  if (space == std::string::npos) return {words, ""};
  return {words.substr(0, space), words.substr(space + 1)};
}

RuleId rule_of(const std::string& name) {
  const auto rule = rules::rule_named(name);
  if (!rule) throw std::runtime_error("no such rule: " + name);
  return *rule;
}

template <class Things>
std::optional<std::uint8_t> index_of(const Things& things, const std::string& id) {
  for (std::size_t i = 0; i < things.size(); ++i) {
    if (things[i].id == id) return static_cast<std::uint8_t>(i);
  }
  return std::nullopt;
}

room::Room room_of(const std::string& name) {
  if (name == "minimal") return support::minimal_room();
  if (name == "full") return support::full_room();
  if (name == "metered") return support::metered_room();
  if (name == "attended") return support::attended_room();
  if (name == "hours") return support::hours_room();
  throw std::runtime_error("no such room: " + name);
}

// "clean every N days" and its like: what the household's file would say.
constexpr std::array<std::string_view, 3> house_words{"warn of the resin ", "clean every ",
                                                      "age at most "};

bool is_of_the_house(const std::string& words) {
  return std::any_of(house_words.begin(), house_words.end(),
                     [&](std::string_view begin) { return words.starts_with(begin); });
}

void keep_house(const std::string& words, room::Room& room) {
  const auto days = [&](std::size_t which) -> std::optional<Duration> {
    const auto rest = after(words, house_words[which]);
    if (!rest) return std::nullopt;
    return std::chrono::hours{24 * static_cast<long>(number_of(*rest))};
  };
  if (const auto before = days(0)) room.purifier->resin_told_before = *before;
  if (const auto every = days(1)) room.vat->clean_every = *every;
  if (const auto longest = days(2)) room.vat->water_age_longest = *longest;
}

}  // namespace

Cast::Cast(const std::vector<Line>& setting) {
  std::string name = "minimal";
  rehearsal::Settings habits;
  habits.messages_lost = 0;
  habits.top_off_per_day = Litres{0};
  habits.weather = {Celsius{15}, Celsius{0}, Celsius{0}};
  std::optional<double> holds_litres, gauge_step;
  WallClock wall;
  for (const Line& line : setting) {
    if (const auto room = after(line.words, "room ")) {
      name = *room;
    } else if (const auto litres = after(line.words, "vat holds ")) {
      holds_litres = number_of(*litres);
    } else if (const auto steps = after(line.words, "gauge steps ")) {
      gauge_step = number_of(*steps);
    } else if (const auto degrees = after(line.words, "water ")) {
      habits.weather.mean = Celsius{number_of(*degrees)};
    } else if (const auto daily = after(line.words, "top-off ")) {
      habits.top_off_per_day = Litres{number_of(*daily)};
    } else if (const auto clock = after(line.words, "clock ")) {
      // The curtain rises at midnight of the room's own line of time.
      const auto hour = static_cast<int>(number_of(*clock));
      wall.zone = std::chrono::hours{hour};
    } else if (!is_of_the_house(line.words)) {
      throw std::runtime_error("unknown setting: " + line.words);
    }
  }
  room::Room room = room_of(name);
  for (const Line& line : setting) keep_house(line.words, room);
  const auto gauge = room::find(room, room::Quantity::level, room::Place::vat);
  if (gauge_step && gauge) room.instruments[*gauge].step = *gauge_step;
  if (holds_litres && room.vat) {
    habits.works.begins_filled = *holds_litres / room.vat->capacity.value;
  }
  theatre_ = std::make_unique<Theatre>(std::move(room), habits, 1);
  theatre_->wall = wall;
}

std::string Cast::play(const Line& line) {
  theatre_->play(support::curtain + line.at);
  if (auto expected = after(line.words, "expect ")) return expect(*expected);
  if (act(line.words)) return "";
  throw std::runtime_error("nobody understands: " + line.words);
}

bool Cast::act(const std::string& words) {
  return act_daemon(words) || act_instrument(words) || act_person(words) ||
         rehearsal::happen(theatre_->pretend(), theatre_->room(), words);
}

bool Cast::act_daemon(const std::string& words) {
  Theatre& theatre = *theatre_;
  if (words == "daemon starts") {
    theatre.start(true);
  } else if (words == "daemon starts unclean") {
    theatre.start(false);
  } else if (words == "daemon starts without its records") {
    theatre.start_without_records();
  } else if (words == "daemon stops") {
    theatre.stop();
  } else if (words == "daemon crashes") {
    theatre.crash();
  } else if (words == "broker goes" || words == "broker returns") {
    theatre.set_link(words == "broker returns");
  } else if (const auto id = after(words, "broker refuses ")) {
    const auto actuator = index_of(theatre.room().actuators, *id);
    if (!actuator) throw std::runtime_error("no such actuator: " + *id);
    theatre.broker_says[*actuator] = 135;  // MQTT 5: not authorized
  } else if (words == "broker takes all again") {
    theatre.broker_says.fill(0);
  } else if (words == "disk refuses" || words == "disk takes") {
    theatre.disk_takes = words == "disk takes";
    theatre.feed({theatre.now(), Recorded{theatre.disk_takes}});
  } else {
    return false;
  }
  return true;
}

bool Cast::act_instrument(const std::string& words) {
  const auto [id, rest] = split(words);
  const auto instrument = index_of(theatre_->room().instruments, id);
  auto value = after(rest, "says ");
  if (!instrument || !value) return false;
  Reading reading{*instrument, 0, Arrival::live, long_ago};
  const std::string retained = " (retained)";
  if (value->ends_with(retained)) {
    reading.arrival = Arrival::retained;
    value->resize(value->size() - retained.size());
  }
  if (*value == "nonsense") {
    theatre_->feed({theatre_->now(), Refusal{*instrument}});
    return true;
  }
  if (*value == "wet" || *value == "full" || *value == "on") {
    reading.value = 1;
  } else if (*value != "dry" && *value != "not full" && *value != "off") {
    reading.value = number_of(*value);
  }
  theatre_->feed({theatre_->now(), reading});
  return true;
}

bool Cast::tell(const Name& who, const std::string& said) {
  static const std::map<std::string, TellKind> kinds{{"rotated", TellKind::rotated},
                                                     {"replaced", TellKind::replaced},
                                                     {"cleaned", TellKind::cleaned},
                                                     {"stocked", TellKind::stocked}};
  const auto [word, rest] = split(said);
  if (word == "tested") {
    const auto instrument = index_of(theatre_->room().instruments, rest);
    if (!instrument) throw std::runtime_error("no such instrument: " + rest);
    const Tell tested{.kind = TellKind::tested, .ticket = 1, .instrument = *instrument, .who = who};
    theatre_->feed({theatre_->now(), tested});
    return true;
  }
  const auto kind = kinds.find(word);
  if (kind == kinds.end()) return false;
  Tell tell;
  tell.who = who;
  tell.kind = kind->second;
  if (tell.kind == TellKind::stocked) {
    const auto [id, amount] = split(rest);
    const auto supply = index_of(theatre_->room().supplies, id);
    if (!supply) throw std::runtime_error("no such supply: " + id);
    tell.supply = *supply;
    tell.value = number_of(amount);
  }
  theatre_->feed({theatre_->now(), tell});
  return true;
}

bool Cast::ask_of_protection(const std::string& words, Ask& ask) const {
  const auto cause_of = [](const std::string& name) {
    const auto& names = room::cause_names;
    const auto found = std::find(names.begin(), names.end(), name);
    if (found == names.end()) throw std::runtime_error("no such cause: " + name);
    return static_cast<room::CauseId>(found - names.begin());
  };
  if (const auto tried = after(words, "asks test_lease ")) {
    const auto actuator = index_of(theatre_->room().actuators, *tried);
    if (!actuator) throw std::runtime_error("no such actuator: " + *tried);
    ask.kind = AskKind::test_lease;
    ask.actuator = *actuator;
  } else if (const auto bypassed = after(words, "asks bypass ")) {
    const auto [cause, time] = split(*bypassed);
    ask.kind = AskKind::bypass;
    ask.cause = cause_of(cause);
    if (!time.empty()) ask.lasting = duration_of(time.substr(std::string("for ").size()));
  } else if (const auto confirmed = after(words, "confirms bypass ")) {
    ask.kind = AskKind::confirm_bypass;
    ask.cause = cause_of(*confirmed);
  } else if (const auto ended = after(words, "ends bypass ")) {
    ask.kind = AskKind::end_bypass;
    ask.cause = cause_of(*ended);
  } else {
    return false;
  }
  return true;
}

bool Cast::act_person(const std::string& words) {
  const auto [name, rest] = split(words);
  Ask ask;
  ask.who = Name(name);
  ask.ticket = 1;
  ask.token = token;
  theatre_->answer.reset();
  if (const auto said = after(rest, "says ")) {
    return tell(ask.who, *said);
  }
  if (ask_of_protection(rest, ask)) {
    // It is all said.
  } else if (rest == "asks start") {
    ask.kind = AskKind::start;
  } else if (const auto lasting = after(rest, "asks start ")) {
    ask.kind = AskKind::start;
    ask.lasting = duration_of(*lasting);
  } else if (rest == "asks stop") {
    ask.kind = AskKind::stop;
  } else if (const auto reset = after(rest, "asks reset ")) {
    ask.kind = AskKind::reset;
    ask.alarm = rule_of(*reset);
  } else if (const auto confirmed = after(rest, "confirms ")) {
    ask.kind = AskKind::confirm;
    ask.alarm = rule_of(*confirmed);
  } else if (const auto acknowledged = after(rest, "acknowledges ")) {
    ask.kind = AskKind::acknowledge;
    ask.alarm = rule_of(*acknowledged);
  } else if (const auto shelved = after(rest, "shelves ")) {
    const auto [alarm, time] = split(*shelved);
    ask.kind = AskKind::shelve;
    ask.alarm = rule_of(alarm);
    ask.lasting = duration_of(time.substr(std::string("for ").size()));
  } else {
    return false;
  }
  theatre_->feed({theatre_->now(), ask});
  return true;
}

std::string Cast::expect(std::string words) {
  Duration patience{0};
  bool lasting = false;
  for (const std::string_view mark : {" within ", " for "}) {
    const std::size_t at = words.rfind(mark);
    if (at == std::string::npos) continue;
    patience = duration_of(std::string_view(words).substr(at + mark.size()));
    lasting = mark == " for ";
    words.resize(at);
  }
  const Instant end = theatre_->now() + patience;
  bool held = holds(words);
  if (lasting) {
    held = held && !theatre_->play(end, [&] { return !holds(words); });
  } else if (!held) {
    held = theatre_->play(end, [&] { return holds(words); });
  }
  if (held) return "";
  std::string announced;
  for (const report::Message& message : theatre_->announced) {
    announced += fmt::format("\n    {} {}: {}", message.id, message.event, message.title);
  }
  const state::Drive& drive = theatre_->state().drives[0];
  const auto& answer = theatre_->answer;
  return fmt::format(
      "expected {}\n  at {:.1f} s; first actuator {}: {}\n  answered: {}\n"
      "  announced and not expected:{}",
      words, seconds(theatre_->since_curtain()), drive.on ? "on" : "off",
      report::words(theatre_->room(), drive.why),
      answer ? report::words(theatre_->room(), answer->why) : "nothing",
      announced.empty() ? " nothing" : announced);
}

bool Cast::holds(const std::string& words) {
  const Theatre& theatre = *theatre_;
  if (words == "nothing announced") return theatre.announced.empty();
  if (const auto announced = after(words, "announced ")) return holds_announced(*announced);
  if (const auto text = after(words, "text ")) {
    return (last_.title + "\n" + last_.text).find(*text) != std::string::npos;
  }
  if (const auto alarm = after(words, "alarm ")) {
    const auto [name, wanted] = split(*alarm);
    const RuleId id = rule_of(name);
    const bool latched = theatre.state().latches[id].set;
    return alarm::name(alarm::state_of(theatre.state().alarms[id], latched)) == wanted;
  }
  if (words == "done") return theatre.answer && theatre.answer->done;
  if (const auto why = after(words, "refused")) {
    return theatre.answer && !theatre.answer->done &&
           report::words(theatre.room(), theatre.answer->why)
                   .find(why->substr(std::min<std::size_t>(1, why->size()))) != std::string::npos;
  }
  const rehearsal::Works& works = theatre_->pretend().works();
  if (const auto over = after(words, "vat over ")) {
    return works.vat().holding().value > number_of(*over);
  }
  if (const auto under = after(words, "vat under ")) {
    return works.vat().holding().value < number_of(*under);
  }
  if (const auto floor = after(words, "floor under "))
    return works.floor().value < number_of(*floor);
  return holds_actuator(words);
}

bool Cast::holds_actuator(const std::string& words) {
  const auto [id, rest] = split(words);
  const auto actuator = index_of(theatre_->room().actuators, id);
  if (!actuator) throw std::runtime_error("nobody can expect: " + words);
  const state::Drive& drive = theatre_->state().drives[*actuator];
  if (rest == "on" || rest == "off") return drive.on == (rest == "on");
  if (rest == "lease kept") return theatre_->state().lease_tests.results[*actuator].passed;
  if (rest == "really on") return theatre_->pretend().plug(*actuator).on();
  if (rest == "really off") return !theatre_->pretend().plug(*actuator).on();
  if (const auto why = after(rest, "because ")) {
    return report::words(theatre_->room(), drive.why).find(*why) != std::string::npos;
  }
  throw std::runtime_error("nobody can expect: " + words);
}

bool Cast::holds_announced(const std::string& words) {
  const auto wanted = split(words);
  auto& announced = theatre_->announced;
  const auto found =
      std::find_if(announced.begin(), announced.end(), [&](const report::Message& message) {
        return message.id == wanted.first && message.event == wanted.second;
      });
  if (found == announced.end()) return false;
  last_ = *found;
  announced.erase(found);
  print_phone_text(last_);
  return true;
}

void Cast::print_phone_text(const report::Message& message) const {
  fmt::print("  {}  priority {}  {} {}\n    {}\n    {}\n",
             report::wall_time(message.at, theatre_->state().circumstances.wall), message.priority,
             message.id, message.event, message.title, message.text);
}

std::string Cast::leftovers() const {
  std::string left;
  for (const report::Message& message : theatre_->announced) {
    left += fmt::format("announced, but not expected: {} {}: {}\n", message.id, message.event,
                        message.title);
  }
  return left;
}

}  // namespace tidewright::scenarios
