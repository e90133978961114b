#include "core/nights/text.hpp"

#include <fmt/format.h>

#include <array>
#include <charconv>
#include <optional>
#include <utility>
#include <vector>

#include "core/nights/fault.hpp"
#include "core/rules/catalogue.hpp"

namespace tidewright::nights {
namespace {

using Words = std::vector<std::string_view>;

std::string clock(Duration d) {
  const auto ms = d.count();
  return fmt::format("{:02}:{:02}:{:02}.{:03}", ms / 3'600'000, ms / 60'000 % 60, ms / 1000 % 60,
                     ms % 1000);
}

template <class Number>
std::optional<Number> number(std::string_view word) {
  Number value{};
  const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), value);
  if (error != std::errc{} || end != word.data() + word.size()) return std::nullopt;
  return value;
}

std::optional<Duration> duration(std::string_view word) {
  // Hours as many as there are, then ":MM:SS.mmm".
  constexpr std::size_t tail = 10;
  if (word.size() <= tail) return std::nullopt;
  const std::string_view after = word.substr(word.size() - tail);
  const auto h = number<int>(word.substr(0, word.size() - tail));
  const auto m = number<int>(after.substr(1, 2));
  const auto s = number<int>(after.substr(4, 2));
  const auto ms = number<int>(after.substr(7, 3));
  if (!h || !m || !s || !ms) return std::nullopt;
  return Duration{((*h * 60L + *m) * 60 + *s) * 1000 + *ms};
}

Words split(std::string_view line) {
  Words words;
  while (!line.empty()) {
    const std::size_t blank = line.find(' ');
    if (blank != 0) words.push_back(line.substr(0, blank));
    line = blank == line.npos ? std::string_view{} : line.substr(blank + 1);
  }
  return words;
}

constexpr std::array<std::pair<std::string_view, Duration Night::*>, 3> times{
    {{"lasts", &Night::lasting}, {"calm_from", &Night::calm_from}, {"fills_by", &Night::fills_by}}};

std::string_view subject_name(const Fault& fault, const room::Room& room) {
  switch (fault.kind->subject) {
    case Subject::none:
      return "";
    case Subject::actuator:
    case Subject::run:
      return room.actuators[fault.subject].id;
    case Subject::alarm:
      return rules::rule(static_cast<room::RuleId>(fault.subject)).name;
    case Subject::cause:
      return room::name(static_cast<room::CauseId>(fault.subject));
    case Subject::leak_sensor:
    case Subject::instrument:
    case Subject::announced:
    case Subject::gauge:
      return room.instruments[fault.subject].id;
  }
  return "";
}

std::string print(const Fault& fault, const room::Room& room) {
  std::string line = "at " + clock(fault.at);
  if (fault.kind->longest > Duration{0}) line += " for " + clock(fault.lasting);
  line += fmt::format(" {}", fault.kind->name);
  if (fault.kind->subject != Subject::none) line += fmt::format(" {}", subject_name(fault, room));
  if (!fault.kind->unit.empty()) line += fmt::format(" {} {}", fault.amount, fault.kind->unit);
  return line;
}

using Problem = std::optional<std::string>;

// at TIME [for TIME] NAME [SUBJECT] [AMOUNT UNIT]
Problem parse_fault(const Words& words, const room::Room& room, Night& night) {
  std::size_t next = 1;
  const auto word = [&] { return next < words.size() ? words[next++] : std::string_view{}; };
  Fault fault;
  const auto at = duration(word());
  if (!at) return "a time like 01:10:00.000 is expected after \"at\"";
  fault.at = *at;
  std::string_view name = word();
  if (name == "for") {
    const auto lasting = duration(word());
    if (!lasting) return "a time like 00:40:00.000 is expected after \"for\"";
    fault.lasting = *lasting;
    name = word();
  }
  fault.kind = fault_kind_named(name);
  if (fault.kind == nullptr) return fmt::format("nothing is called \"{}\"", name);
  if (fault.kind->subject != Subject::none) {
    const std::string_view subject = word();
    for (const std::uint8_t candidate : subjects(*fault.kind, room)) {
      fault.subject = candidate;
      if (subject_name(fault, room) == subject) break;
      fault.subject = no_subject;
    }
    if (fault.subject == no_subject) return fmt::format("{} has no \"{}\"", room.id, subject);
  }
  if (!fault.kind->unit.empty()) {
    const auto amount = number<double>(word());
    if (!amount) return fmt::format("an amount in {} is expected", fault.kind->unit);
    fault.amount = *amount;
  }
  night.faults.push_back(fault);
  return std::nullopt;
}

Problem parse_line(const Words& words, const room::Room& room, Night& night) {
  if (words[0] == "at") return parse_fault(words, room, night);
  if (words.size() != 2) return "two words are expected";
  const std::string_view value = words[1];
  if (words[0] == "household") {
    night.household = value;
    return std::nullopt;
  }
  if (words[0] == "seed") {
    const auto seed = number<std::uint64_t>(value);
    night.seed = seed.value_or(0);
    return seed ? std::nullopt : Problem{"a whole number is expected"};
  }
  for (const auto& [name, member] : times) {
    if (name != words[0]) continue;
    const auto time = duration(value);
    night.*member = time.value_or(Duration{0});
    return time ? std::nullopt : Problem{"a time like 06:30:00.000 is expected"};
  }
  for (const HabitRow& row : habits()) {
    if (row.name != words[0]) continue;
    const auto habit = number<double>(value);
    night.habits.*row.value = habit.value_or(0);
    return habit ? std::nullopt : Problem{"a number is expected"};
  }
  return fmt::format("nothing is called \"{}\"", words[0]);
}

}  // namespace

std::string print(const Night& night, const room::Room& room) {
  std::string text = fmt::format("household {}\nseed {}\n", night.household, night.seed);
  for (const auto& [name, member] : times) {
    if (night.*member > Duration{0}) text += fmt::format("{} {}\n", name, clock(night.*member));
  }
  for (const HabitRow& row : habits()) {
    text += fmt::format("{} {}\n", row.name, night.habits.*row.value);
  }
  for (const Fault& fault : night.faults) text += print(fault, room) + "\n";
  return text;
}

std::string household_of(std::string_view text) {
  constexpr std::string_view word = "household ";
  std::size_t at = text.find(word);
  while (at != text.npos && at != 0 && text[at - 1] != '\n') at = text.find(word, at + 1);
  if (at == text.npos) return "";
  text.remove_prefix(at + word.size());
  return std::string(text.substr(0, text.find('\n')));
}

std::variant<Night, std::string> parse(std::string_view text, const room::Room& room) {
  Night night;
  for (int line_number = 1; !text.empty(); ++line_number) {
    const std::size_t end = text.find('\n');
    const std::string_view line = text.substr(0, end);
    text = end == text.npos ? std::string_view{} : text.substr(end + 1);
    const Words words = split(line);
    if (words.empty() || line.starts_with('#')) continue;
    if (const Problem problem = parse_line(words, room, night)) {
      return fmt::format("line {}: {}", line_number, *problem);
    }
  }
  return night;
}

}  // namespace tidewright::nights
