#include "daemon/store/state_text.hpp"

#include <array>
#include <map>

#include "core/state/fields.hpp"
#include "daemon/store/value_text.hpp"

namespace tidewright::store {
namespace {

template <class T>
constexpr bool is_array = false;
template <class T, std::size_t N>
constexpr bool is_array<std::array<T, N>> = true;

// Values that are written as they are, and structs that are walked through.
template <class T>
concept Value = requires(std::string& out, const T& value) {
  put(out, value);
};

// Walks the state and keeps the path to where it is: `latches.leak.set`. `Leaf` meets the values.
template <class Leaf>
class Walk {
 public:
  Walk(const room::Room& room, Leaf leaf) : room_(room), leaf_(leaf) {}

  template <class T>
  void operator()(std::string_view name, T& member) {
    const std::size_t above = path_.size();
    if (above > 0) path_ += '.';
    path_ += name;
    using Plain = std::remove_const_t<T>;
    if constexpr (Value<Plain> || std::is_same_v<Plain, Reason>) {
      leaf_(path_, member);
    } else if constexpr (is_array<Plain>) {
      for (std::size_t i = 0; i < member.size(); ++i) (*this)(std::to_string(i), member[i]);
    } else {
      state::fields(*this, member);
    }
    path_.resize(above);
  }

  void rules(std::string_view name, auto& member) {
    under(name, room::rule_count, member.items,
          [](std::size_t i) { return store::name(static_cast<room::RuleId>(i)); });
  }
  void instruments(std::string_view name, auto& member) {
    under(name, room_.instruments.size(), member,
          [this](std::size_t i) { return std::string_view{room_.instruments[i].id}; });
  }
  void actuators(std::string_view name, auto& member) {
    under(name, room_.actuators.size(), member,
          [this](std::size_t i) { return std::string_view{room_.actuators[i].id}; });
  }
  void supplies(std::string_view name, auto& member) {
    under(name, room_.supplies.size(), member,
          [this](std::size_t i) { return std::string_view{room_.supplies[i].id}; });
  }

 private:
  void under(std::string_view name, std::size_t count, auto& members, auto name_of) {
    const std::size_t above = path_.size();
    if (above > 0) path_ += '.';
    path_ += name;
    for (std::size_t i = 0; i < count; ++i) (*this)(name_of(i), members[i]);
    path_.resize(above);
  }

  const room::Room& room_;
  Leaf leaf_;
  std::string path_;
};

void put_any(std::string& out, const room::Room& room, const auto& value) {
  if constexpr (Value<std::remove_cvref_t<decltype(value)>>) {
    put(out, value);
  } else {
    put(out, room, value);
  }
}

bool get_any(std::string_view text, const room::Room& room, auto& value) {
  if constexpr (Value<std::remove_cvref_t<decltype(value)>>) {
    return get(text, value);
  } else {
    return get(text, room, value);
  }
}

// A number that says how much of an array is in use must not point past it.
bool holds_together(const State& state) {
  const auto fits = [](const state::Samples& samples) {
    return samples.count <= samples.items.size();
  };
  return fits(state.ledger.product) && fits(state.ledger.permeate);
}

std::string every_field(const room::Room& room, const State& state) {
  std::string out;
  Walk walk{room, [&](const std::string& path, const auto& value) {
              out += path;
              out += ' ';
              put_any(out, room, value);
              out += '\n';
            }};
  state::fields(walk, state);
  return out;
}

// Cuts the first line off `text`.
std::string_view next_line(std::string_view& text) {
  const auto end = std::min(text.find('\n'), text.size());
  const auto line = text.substr(0, end);
  text.remove_prefix(std::min(end + 1, text.size()));
  return line;
}

}  // namespace

std::string to_text(const room::Room& room, const State& state) {
  const std::string all = every_field(room, state);
  const std::string fresh = every_field(room, State{});
  std::string out;
  std::string_view rest = all;
  std::string_view fresh_rest = fresh;
  while (!rest.empty()) {
    const auto line = next_line(rest);
    if (line == next_line(fresh_rest)) continue;
    out += line;
    out += '\n';
  }
  return out;
}

bool from_text(const room::Room& room, std::string_view text, State& state) {
  std::map<std::string_view, std::string_view> values;
  while (!text.empty()) {
    const auto line = next_line(text);
    const auto space = line.find(' ');
    if (space == std::string_view::npos) return false;
    values[line.substr(0, space)] = line.substr(space + 1);
  }
  state = State{};
  bool readable = true;
  Walk walk{room, [&](const std::string& path, auto& value) {
              const auto found = values.find(path);
              if (found == values.end()) return;
              readable = get_any(found->second, room, value) && readable;
            }};
  state::fields(walk, state);
  return readable && holds_together(state);
}

}  // namespace tidewright::store
