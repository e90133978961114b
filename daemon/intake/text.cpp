#include "daemon/intake/text.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <string>

namespace tidewright::intake {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

bool same_letters(std::string_view a, std::string_view lower) {
  return std::equal(a.begin(), a.end(), lower.begin(), lower.end(), [](char x, char y) {
    return (x >= 'A' && x <= 'Z' ? static_cast<char>(x - 'A' + 'a') : x) == y;
  });
}

bool one_of(std::string_view text, std::initializer_list<std::string_view> lower_words) {
  return std::any_of(lower_words.begin(), lower_words.end(),
                     [&](std::string_view word) { return same_letters(text, word); });
}

// Takes `text` apart from the left.
class Cursor {
 public:
  explicit Cursor(std::string_view text) : rest_(text) {}

  bool at_end() const { return rest_.empty(); }

  bool take(char c) {
    if (rest_.empty() || rest_.front() != c) return false;
    rest_.remove_prefix(1);
    return true;
  }

  // Exactly `count` digits.
  std::optional<int> digits(std::size_t count) {
    if (rest_.size() < count) return std::nullopt;
    int value = 0;
    for (char c : rest_.substr(0, count)) {
      if (!is_digit(c)) return std::nullopt;
      value = value * 10 + (c - '0');
    }
    rest_.remove_prefix(count);
    return value;
  }

  // The digits after a decimal point, as milliseconds; what is finer is cut off.
  std::optional<int> milliseconds() {
    int value = 0;
    int weight = 100;
    std::size_t count = 0;
    while (count < rest_.size() && is_digit(rest_[count])) {
      value += weight * (rest_[count++] - '0');
      weight /= 10;
    }
    if (count == 0) return std::nullopt;
    rest_.remove_prefix(count);
    return value;
  }

 private:
  std::string_view rest_;
};

std::optional<std::chrono::sys_days> date(Cursor& in) {
  const auto year = in.digits(4);
  if (!year || !in.take('-')) return std::nullopt;
  const auto month = in.digits(2);
  if (!month || !in.take('-')) return std::nullopt;
  const auto day = in.digits(2);
  if (!day) return std::nullopt;
  const std::chrono::year_month_day ymd{std::chrono::year{*year},
                                        std::chrono::month{static_cast<unsigned>(*month)},
                                        std::chrono::day{static_cast<unsigned>(*day)}};
  if (!ymd.ok()) return std::nullopt;
  return std::chrono::sys_days{ymd};
}

std::optional<Duration> time_of_day(Cursor& in) {
  const auto hour = in.digits(2);
  if (!hour || *hour > 23 || !in.take(':')) return std::nullopt;
  const auto minute = in.digits(2);
  if (!minute || *minute > 59) return std::nullopt;
  int second = 0;
  int millisecond = 0;
  if (in.take(':')) {
    const auto seconds_read = in.digits(2);
    if (!seconds_read || *seconds_read > 60) return std::nullopt;  // 60: a leap second
    second = *seconds_read;
    if (in.take('.') || in.take(',')) {  // ISO 8601 allows either sign
      const auto fraction = in.milliseconds();
      if (!fraction) return std::nullopt;
      millisecond = *fraction;
    }
  }
  return std::chrono::hours{*hour} + std::chrono::minutes{*minute} + std::chrono::seconds{second} +
         Duration{millisecond};
}

// Local time minus UTC: "Z", "+02:00", "-0330", "+02"; `zone` if nothing is said.
std::optional<std::chrono::minutes> offset(Cursor& in, std::chrono::minutes zone) {
  if (in.at_end()) return zone;
  if (in.take('Z')) return std::chrono::minutes{0};
  const bool west = in.take('-');
  if (!west && !in.take('+')) return std::nullopt;
  const auto hour = in.digits(2);
  if (!hour || *hour > 23) return std::nullopt;
  int minute = 0;
  if (!in.at_end()) {
    in.take(':');
    const auto minutes_read = in.digits(2);
    if (!minutes_read || *minutes_read > 59) return std::nullopt;
    minute = *minutes_read;
  }
  const std::chrono::minutes ahead{*hour * 60 + minute};
  return west ? -ahead : ahead;
}

std::optional<Duration> iso_8601(std::string_view text, std::chrono::minutes zone) {
  Cursor in(text);
  const auto day = date(in);
  if (!day || !(in.take('T') || in.take(' '))) return std::nullopt;
  const auto clock = time_of_day(in);
  if (!clock) return std::nullopt;
  const auto ahead = offset(in, zone);
  if (!ahead || !in.at_end()) return std::nullopt;
  return day->time_since_epoch() + *clock - *ahead;
}

Refused why_no_number(std::string_view text) {
  std::string_view bare = text;
  if (!bare.empty() && (bare.front() == '-' || bare.front() == '+')) bare.remove_prefix(1);
  if (text.empty()) return Refused::empty;
  if (one_of(bare, {"nan", "inf", "infinity"})) return Refused::not_finite;
  if (one_of(bare, {"true", "false"})) return Refused::boolean_for_number;
  if (bare.starts_with("0x") || bare.starts_with("0X")) return Refused::hexadecimal;
  if (one_of(bare, {"null"})) return Refused::null;
  if (one_of(bare, {"unavailable", "unknown", "none", "offline", "undefined", "n/a"})) {
    return Refused::says_unknown;
  }
  const auto comma = bare.find(',');
  if (comma != std::string_view::npos &&
      std::all_of(bare.begin(), bare.end(), [](char c) { return is_digit(c) || c == ','; })) {
    return Refused::decimal_comma;
  }
  return Refused::not_a_number;
}

}  // namespace

bool is_utf8(std::string_view bytes) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(bytes[i]); };
  std::size_t i = 0;
  while (i < bytes.size()) {
    const unsigned char lead = byte(i);
    std::size_t length = 1;
    unsigned char second_low = 0x80;
    unsigned char second_high = 0xBF;
    if (lead >= 0xC2 && lead <= 0xDF) {
      length = 2;
    } else if (lead >= 0xE0 && lead <= 0xEF) {
      length = 3;
      if (lead == 0xE0) second_low = 0xA0;
      if (lead == 0xED) second_high = 0x9F;
    } else if (lead >= 0xF0 && lead <= 0xF4) {
      length = 4;
      if (lead == 0xF0) second_low = 0x90;
      if (lead == 0xF4) second_high = 0x8F;
    } else if (lead >= 0x80) {
      return false;
    }
    if (bytes.size() - i < length) return false;
    if (length > 1 && (byte(i + 1) < second_low || byte(i + 1) > second_high)) return false;
    for (std::size_t k = 2; k < length; ++k) {
      if ((byte(i + k) & 0xC0) != 0x80) return false;
    }
    i += length;
  }
  return true;
}

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view around = " \t\r\n";
  const auto first = text.find_first_not_of(around);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(around) - first + 1);
}

std::variant<double, Refused> number(std::string_view text) {
  std::string_view digits = text;
  if (digits.starts_with('+')) digits.remove_prefix(1);
  const std::size_t sign = digits.starts_with('-') && digits.size() == text.size() ? 1 : 0;
  // from_chars would also read the words for infinity and for "not a number".
  if (digits.size() <= sign || !(is_digit(digits[sign]) || digits[sign] == '.')) {
    return why_no_number(text);
  }
  double value = 0;
  const char* end = digits.data() + digits.size();
  const auto [stopped, error] = std::from_chars(digits.data(), end, value);
  if (stopped != end || error == std::errc::invalid_argument) return why_no_number(text);
  if (error != std::errc{} || !std::isfinite(value)) return Refused::not_finite;
  return value;
}

std::optional<Duration> utc_time(std::string_view text, std::chrono::minutes zone) {
  if (const auto iso = iso_8601(text, zone)) return iso;
  const auto unix_seconds = number(text);
  const double* value = std::get_if<double>(&unix_seconds);
  constexpr double year_5138 = 1e11;  // keeps the milliseconds inside their integer
  if (value == nullptr || std::abs(*value) > year_5138) return std::nullopt;
  return Duration{std::llround(*value * 1000)};
}

}  // namespace tidewright::intake
