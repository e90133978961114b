#include "tests/pretend_room/story.hpp"

#include <fmt/core.h>

#include <sstream>
#include <stdexcept>

#include "core/rehearsal/happening.hpp"
#include "tests/pretend_room/narrator.hpp"

namespace tidewright::pretend {
namespace {

using rehearsal::PretendRoom;

Duration duration_of(const std::string& words) {
  std::istringstream in(words);
  long number = 0;
  std::string unit;
  in >> number >> unit;
  if (unit == "s") return std::chrono::seconds{number};
  if (unit == "min") return std::chrono::minutes{number};
  if (unit == "h") return std::chrono::hours{number};
  throw std::runtime_error("not a duration: " + words);
}

bool holds(const std::string& condition, PretendRoom& pretend, const room::Room& room,
           const Wire& wire) {
  std::istringstream in(condition);
  std::string first;
  std::string second;
  std::string third;
  in >> first >> second >> third;
  const double litres = pretend.works().vat().holding().value;
  if (first == "vat" && second == "over") return litres > std::stod(third);
  if (first == "vat" && second == "under") return litres < std::stod(third);
  if (first == "told") return wire.told(second) == third;
  for (std::size_t i = 0; i < room.actuators.size(); ++i) {
    if (room.actuators[i].id != first) continue;
    return pretend.plug(static_cast<room::ActuatorIndex>(i)).on() == (second == "on");
  }
  throw std::runtime_error("nobody can wait until " + condition);
}

}  // namespace

Story::Story(std::string_view text, Instant begins) : begins_(begins), line_since_(begins) {
  std::istringstream file{std::string(text)};
  for (std::string line; std::getline(file, line);) {
    if (!line.empty() && line.front() != '#') lines_.push_back(line);
  }
}

void Story::print(Instant now, const std::string& words) const { print_line(now - begins_, words); }

Story::Course Story::go_on(PretendRoom& pretend, const room::Room& room, Wire& wire) {
  while (!failed_ && next_ < lines_.size()) {
    if (!play(lines_[next_], pretend, room, wire)) break;
    ++next_;
    line_since_ = pretend.now();
  }
  if (failed_) return Course::failed;
  return next_ == lines_.size() ? Course::came_true : Course::under_way;
}

bool Story::play(const std::string& line, PretendRoom& pretend, const room::Room& room,
                 Wire& wire) {
  const auto after = [&](std::string_view verb) { return line.substr(verb.size()); };
  if (line.starts_with("say ")) {
    print(pretend.now(), after("say "));
    return true;
  }
  if (line.starts_with("wait ")) return play_wait(after("wait "), pretend, room, wire);
  if (line.starts_with("ask ")) return play_ask(after("ask "), wire);
  if (line.starts_with("tell ")) {
    wire.request("tell", fmt::format(R"({{"tell": "{}", "who": "ann"}})", after("tell ")));
    return true;
  }
  if (!rehearsal::happen(pretend, room, line)) {
    throw std::runtime_error("nobody understands: " + line);
  }
  return true;
}

bool Story::play_wait(const std::string& what, PretendRoom& pretend, const room::Room& room,
                      Wire& wire) {
  const Duration waited = pretend.now() - line_since_;
  if (!what.starts_with("until ")) return waited >= duration_of(what);
  const std::string mark = ", at most ";
  const std::size_t at = what.find(mark);
  if (at == std::string::npos) throw std::runtime_error("a wait needs `at most`: " + what);
  const std::string condition = what.substr(6, at - 6);
  if (holds(condition, pretend, room, wire)) return true;
  if (waited > duration_of(what.substr(at + mark.size()))) {
    print(pretend.now(), "IT WENT OTHERWISE: waited in vain until " + condition);
    failed_ = true;
  }
  return false;
}

bool Story::play_ask(const std::string& what, Wire& wire) {
  const std::size_t space = what.find(' ');
  const std::string verb = what.substr(0, space);
  const std::string alarm = space == std::string::npos ? "" : what.substr(space + 1);
  const auto request = [&](const std::string& asked, const std::string& token) {
    return fmt::format(R"({{"ask": "{}"{}{}, "who": "ann"}})", asked,
                       alarm.empty() ? "" : fmt::format(R"(, "alarm": "{}")", alarm),
                       token.empty() ? "" : fmt::format(R"(, "token": {})", token));
  };
  if (!asked_) {
    wire.request("ask", request(verb, ""));
    asked_ = verb == "reset";  // answered with a token, to be confirmed
    return !asked_;
  }
  const auto token = wire.take_token();
  if (!token) return false;
  wire.request("ask", request("confirm", *token));
  asked_ = false;
  return true;
}

}  // namespace tidewright::pretend
