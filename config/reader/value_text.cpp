#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <optional>

#include "config/reader/nearest.hpp"
#include "config/reader/value_parts.hpp"
#include "config/reader/wording.hpp"

namespace tidewright::config {
namespace {

constexpr std::size_t topic_bytes_max = 256;

// What keeps a text from being a topic to listen or speak on; empty if nothing.
std::string_view fault_of_topic(std::string_view topic) {
  if (topic.size() > topic_bytes_max) return "longer than 256 bytes";
  if (topic.find_first_of("+#") != topic.npos) return "with a wildcard";
  if (topic.starts_with('$')) return "one of the broker's own topics";
  if (topic.starts_with('/') || topic.ends_with('/') || topic.find("//") != topic.npos) {
    return "with an empty part between its slashes";
  }
  const auto is_control = [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; };
  if (std::any_of(topic.begin(), topic.end(), is_control)) return "with a control character";
  return "";
}

bool is_id(std::string_view text) {
  constexpr std::string_view allowed = "abcdefghijklmnopqrstuvwxyz0123456789_-";
  return !text.empty() && text.size() <= 64 && text.find_first_not_of(allowed) == text.npos;
}

// RFC 6901, section 3: "" or parts that begin with '/', where '~' is followed by 0 or 1.
bool is_pointer(std::string_view text) {
  if (!text.empty() && !text.starts_with('/')) return false;
  for (std::size_t at = text.find('~'); at != text.npos; at = text.find('~', at + 1)) {
    if (at + 1 == text.size() || (text[at + 1] != '0' && text[at + 1] != '1')) return false;
  }
  return true;
}

std::optional<int> digits_in(std::string_view two) {
  int value = 0;
  const char* end = two.data() + two.size();
  const auto [stopped, error] = std::from_chars(two.data(), end, value);
  if (two.size() != 2 || error != std::errc{} || stopped != end || value < 0) return std::nullopt;
  return value;
}

// "08:00" -> 480; "24:00" is the end of the day.
std::optional<int> minutes_after_midnight(std::string_view text) {
  if (text.size() != 5 || text[2] != ':') return std::nullopt;
  const auto hour = digits_in(text.substr(0, 2));
  const auto minute = digits_in(text.substr(3));
  if (!hour || !minute || *minute > 59 || *hour * 60 + *minute > 24 * 60) return std::nullopt;
  return *hour * 60 + *minute;
}

bool read_hours(std::string_view text, Value& value) {
  const std::size_t dash = text.find('-');
  if (dash == text.npos) return false;
  const auto from = minutes_after_midnight(text.substr(0, dash));
  const auto to = minutes_after_midnight(text.substr(dash + 1));
  if (!from || !to || *from == *to) return false;
  value.from = *from;
  value.to = *to;
  return true;
}

bool read_choice(const Key& key, const Node& node, Problems& problems) {
  const auto choices = parted(key.example);
  if (std::find(choices.begin(), choices.end(), node.text) != choices.end()) return true;
  problems.add(node.at,
               fmt::format("`{}` is {}; expected {}{}", key.name, as_written(node), expected(key),
                           did_you_mean(nearest(node.text, choices), "\"")),
               std::string{key.help});
  return false;
}

}  // namespace

bool read_text(const Key& key, const Node& node, Value& value, Problems& problems) {
  std::string_view fault;
  bool good = node.kind == Node::Kind::text && (!node.text.empty() || key.kind == Kind::pointer);
  if (good && key.kind == Kind::choice) return read_choice(key, node, problems);
  if (good && key.kind == Kind::topic) fault = fault_of_topic(node.text);
  if (good && key.kind == Kind::id) good = is_id(node.text);
  if (good && key.kind == Kind::pointer) good = is_pointer(node.text);
  if (good && key.kind == Kind::sentence) good = node.text == key.example;
  if (good && key.kind == Kind::hours) good = read_hours(node.text, value);
  if (good && fault.empty()) return true;

  std::string found = as_written(node);
  if (!fault.empty()) found += fmt::format(", {}", fault);
  const std::string hint = key.kind == Kind::id
                               ? "An id has 1 to 64 of the letters a to z, digits, _ and -."
                               : std::string{key.help};
  refuse(key, node.at, found, hint, problems);
  return false;
}

}  // namespace tidewright::config
