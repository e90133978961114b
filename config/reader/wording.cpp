#include "config/reader/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace tidewright::config {
namespace {

using namespace std::literals;

std::span<const Dimension> dimensions_of(Kind kind) {
  static constexpr std::array volume{Dimension::volume};
  static constexpr std::array level{Dimension::share, Dimension::volume};
  static constexpr std::array share{Dimension::share};
  static constexpr std::array time{Dimension::time};
  static constexpr std::array flow{Dimension::flow};
  static constexpr std::array solids{Dimension::solids};
  static constexpr std::array temperature{Dimension::temperature};
  static constexpr std::array power{Dimension::power};
  static constexpr std::array pressure{Dimension::pressure};
  static constexpr std::array water{Dimension::flow, Dimension::volume};
  switch (kind) {
    case Kind::volume:
      return volume;
    case Kind::level:
      return level;
    case Kind::share:
      return share;
    case Kind::time:
      return time;
    case Kind::flow:
      return flow;
    case Kind::solids:
      return solids;
    case Kind::temperature:
      return temperature;
    case Kind::power:
      return power;
    case Kind::pressure:
      return pressure;
    case Kind::flow_meter:
      return water;
    default:
      return {};
  }
}

std::string name_of(const Key& key) {
  switch (key.kind) {
    case Kind::level:
      return "a share of the vat or a volume";
    case Kind::text:
      return "a text in quotes";
    case Kind::id:
      return "an id";
    case Kind::topic:
      return "an MQTT topic";
    case Kind::pointer:
      return "a JSON Pointer";
    case Kind::words:
      return "a word, or a list of words";
    case Kind::count:
      return "a whole number without quotes";
    case Kind::number:
      return "a number without quotes";
    case Kind::hours:
      return "two times of day";
    case Kind::own_unit:
      return "a unit";
    case Kind::own_step:
      return "a quantity";
    case Kind::own_range:
      return "a list of two quantities";
    case Kind::own_points:
      return "a list of pairs";
    default:
      return std::string{tidewright::config::name_of(dimensions_of(key.kind).front())};
  }
}

}  // namespace

std::string listed(std::span<const std::string_view> words, std::string_view last_by) {
  std::string list;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) list += i + 1 == words.size() ? fmt::format(" {} ", last_by) : ", ";
    list += words[i];
  }
  return list;
}

std::string quoted_list(std::span<const std::string_view> words, std::string_view last_by) {
  std::vector<std::string> quoted;
  for (const auto word : words) quoted.push_back(fmt::format("\"{}\"", word));
  const std::vector<std::string_view> views{quoted.begin(), quoted.end()};
  return listed(views, last_by);
}

std::vector<std::string_view> parted(std::string_view choices) {
  constexpr std::string_view between = " | ";
  std::vector<std::string_view> parts;
  for (auto at = choices.find(between); at != choices.npos; at = choices.find(between)) {
    parts.push_back(choices.substr(0, at));
    choices.remove_prefix(at + between.size());
  }
  parts.push_back(choices);
  return parts;
}

std::string did_you_mean(std::string_view near, std::string_view quote) {
  return near.empty() ? "" : fmt::format("; did you mean {}{}{}?", quote, near, quote);
}

bool accepts(Kind kind, Dimension dimension) {
  const auto dimensions = dimensions_of(kind);
  return std::find(dimensions.begin(), dimensions.end(), dimension) != dimensions.end();
}

std::vector<std::string_view> units_accepted(Kind kind) {
  constexpr std::array second_spellings{"l"sv, "ml"sv, "C"sv, "F"sv, "day"sv, "mg/L"sv};
  std::vector<std::string_view> words;
  for (const UnitWord& unit : unit_words()) {
    if (accepts(kind, unit.dimension) && std::ranges::count(second_spellings, unit.word) == 0) {
      words.push_back(unit.word);
    }
  }
  return words;
}

// The usual units of a kind, two at most: what a hint proposes.
std::vector<std::string_view> usual_units(Kind kind) {
  std::vector<std::string_view> usual;
  const auto dimensions = dimensions_of(kind);
  const std::size_t of_each = dimensions.size() > 1 ? 1 : 2;
  for (const Dimension dimension : dimensions) {
    std::size_t taken = 0;
    for (const UnitWord& unit : unit_words()) {
      if (unit.dimension == dimension && taken++ < of_each) usual.push_back(unit.word);
    }
  }
  return usual;
}

std::string units_of(Kind kind) { return listed(units_accepted(kind), "or"); }

std::string expected(const Key& key) {
  switch (key.kind) {
    case Kind::choice:
      return quoted_list(parted(key.example), "or");
    case Kind::sentence:
      return fmt::format("exactly \"{}\"", key.example);
    case Kind::yes_no:
      return "true or false";
    case Kind::count:
    case Kind::number:
    case Kind::own_range:
    case Kind::own_points:
      return fmt::format("{}, such as {}", name_of(key), key.example);
    default:
      return fmt::format("{}, such as \"{}\"", name_of(key), key.example);
  }
}

}  // namespace tidewright::config
