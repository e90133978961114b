#include "daemon/store/line.hpp"

#include <cmath>
#include <map>
#include <utility>

#include "daemon/store/checksum.hpp"
#include "daemon/store/event_fields.hpp"
#include "daemon/store/value_text.hpp"

namespace tidewright::store {
namespace {

// Puts version and checksum before what is to be protected.
std::string sealed(const std::string& body) {
  return fmt::format("{} {:08x} {}", journal_version, checksum(body), body);
}

std::string begin(std::uint64_t sequence, Instant at, std::string_view kind) {
  return fmt::format("{} {} {}", sequence, at.time_since_epoch().count(), kind);
}

class Printer {
 public:
  Printer(std::string& out, const room::Room& room) : out_(out), room_(room) {}

  void operator()(std::string_view name, const auto& member) { put(named(name), member); }
  void later(std::string_view name, const auto& member) { put(named(name), member); }
  void instrument(std::string_view name, std::uint8_t index) {
    put_instrument(named(name), room_, index);
  }
  void instrument_if_any(std::string_view name, std::uint8_t index) { instrument(name, index); }
  void actuator(std::string_view name, std::uint8_t index) {
    put_actuator(named(name), room_, index);
  }
  void actuator_if_any(std::string_view name, std::uint8_t index) { actuator(name, index); }
  void supply_if_any(std::string_view name, std::uint8_t index) {
    put_supply(named(name), room_, index);
  }

 private:
  std::string& named(std::string_view name) {
    out_ += ' ';
    out_ += name;
    out_ += '=';
    return out_;
  }

  std::string& out_;
  const room::Room& room_;
};

// The line's `name=value` words. Each must be there, well written, and none may be left over.
class Parser {
 public:
  Parser(std::map<std::string_view, std::string_view> words, const room::Room& room)
      : words_(std::move(words)), room_(room) {}

  void operator()(std::string_view name, auto& member) {
    if (!get(taken(name), member)) trouble_ = "a value that cannot be read";
    if constexpr (std::is_same_v<std::remove_cvref_t<decltype(member)>, double>) {
      if (!std::isfinite(member)) trouble_ = "a value that is no number";
    }
  }
  void later(std::string_view name, auto& member) {
    if (words_.contains(name)) (*this)(name, member);
  }
  void instrument(std::string_view name, std::uint8_t& index) {
    const bool known = get_instrument(taken(name), room_, index);
    thing(known && index < room_.instruments.size());
  }
  void instrument_if_any(std::string_view name, std::uint8_t& index) {
    const bool known = get_instrument(taken(name), room_, index);
    thing(known && (index == no_subject || index < room_.instruments.size()));
  }
  void actuator(std::string_view name, std::uint8_t& index) {
    const bool known = get_actuator(taken(name), room_, index);
    thing(known && index < room_.actuators.size());
  }
  void actuator_if_any(std::string_view name, std::uint8_t& index) {
    const std::string_view word = taken(name);
    if (word.empty()) return;
    const bool known = get_actuator(word, room_, index);
    thing(known && (index == no_subject || index < room_.actuators.size()));
  }
  void supply_if_any(std::string_view name, std::uint8_t& index) {
    const std::string_view word = taken(name);
    if (word.empty()) return;
    const bool known = get_supply(word, room_, index);
    thing(known && (index == no_subject || index < room_.supplies.size()));
  }
  Trouble trouble() const {
    if (trouble_ == nullptr && !words_.empty()) return "a word too much";
    return trouble_;
  }

 private:
  std::string_view taken(std::string_view name) {
    const auto word = words_.find(name);
    if (word == words_.end()) return {};
    const std::string_view value = word->second;
    words_.erase(word);
    return value;
  }
  void thing(bool known) {
    if (!known) trouble_ = "a thing that the household's file does not name";
  }

  std::map<std::string_view, std::string_view> words_;
  const room::Room& room_;
  Trouble trouble_ = nullptr;
};

template <std::size_t... Kinds>
bool make(std::string_view kind, What& what, std::index_sequence<Kinds...>) {
  return ((event_kinds[Kinds] == kind && (what.emplace<Kinds>(), true)) || ...);
}

// Cuts what stands before the next `until` off `text`.
std::string_view cut(std::string_view& text, char until) {
  const auto end = std::min(text.find(until), text.size());
  const auto word = text.substr(0, end);
  text.remove_prefix(std::min(end + 1, text.size()));
  return word;
}

Trouble parse_event(std::string_view kind, std::string_view rest, const room::Room& room,
                    Line& line) {
  Event event{.at = line.at, .what = {}};
  if (!make(kind, event.what, std::make_index_sequence<event_kinds.size()>{})) {
    return "a kind of line that this version does not know";
  }
  std::map<std::string_view, std::string_view> words;
  while (!rest.empty()) {
    if (rest.starts_with("raw=")) {
      if (!get_escaped(rest.substr(4), line.raw)) return "a payload that cannot be read";
      break;
    }
    std::string_view word = cut(rest, ' ');
    const auto name = cut(word, '=');
    if (!words.emplace(name, word).second) return "a word that stands twice";
  }
  Parser parser{std::move(words), room};
  std::visit([&](auto& what) { fields(parser, what); }, event.what);
  line.what = event;
  return parser.trouble();
}

}  // namespace

std::string print(const room::Room& room, std::uint64_t sequence, const Event& event,
                  std::string_view raw) {
  std::string body = begin(sequence, event.at, event_kinds[event.what.index()]);
  Printer printer{body, room};
  std::visit([&](const auto& what) { fields(printer, what); }, event.what);
  if (!raw.empty()) {
    body += " raw=";
    put_escaped(body, raw, true);
  }
  return sealed(body);
}

std::string print(std::uint64_t sequence, Instant at, const HouseholdText& household) {
  std::string body = begin(sequence, at, "household ");
  put_escaped(body, household.text, true);
  return sealed(body);
}

std::string print(std::uint64_t sequence, Instant at, const StateText& state) {
  std::string body = begin(sequence, at, state.fresh ? "run " : "state ");
  put_escaped(body, state.text, true);
  return sealed(body);
}

Trouble parse(std::string_view text, const room::Room& room, Line& line) {
  unsigned version = 0;
  if (!get(cut(text, ' '), version) || version == 0) return "no line of a journal";
  if (version > journal_version) return "written by a newer tidewright";
  const auto sum = cut(text, ' ');
  if (sum != fmt::format("{:08x}", checksum(text))) {
    return "its checksum does not fit: cut off, or changed since it was written";
  }
  line = Line{};
  if (!get(cut(text, ' '), line.sequence)) return "a sequence number that cannot be read";
  if (!get(cut(text, ' '), line.at) || line.at == never) return "an instant that cannot be read";
  const auto kind = cut(text, ' ');
  if (kind != "household" && kind != "run" && kind != "state") {
    return parse_event(kind, text, room, line);
  }
  std::string content;
  if (!get_escaped(text, content)) return "a text that cannot be read";
  if (kind == "household") {
    line.what = HouseholdText{std::move(content)};
  } else {
    line.what = StateText{.text = std::move(content), .fresh = kind == "run"};
  }
  return nullptr;
}

}  // namespace tidewright::store
