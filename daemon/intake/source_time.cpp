#include "daemon/intake/source_time.hpp"

#include <cmath>
#include <cstddef>
#include <variant>

#include "daemon/intake/text.hpp"

namespace tidewright::intake {
namespace {

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

}  // namespace

std::optional<Duration> utc_time(std::string_view text, std::chrono::minutes zone) {
  if (const auto iso = iso_8601(text, zone)) return iso;
  const auto unix_seconds = number(text);
  const double* value = std::get_if<double>(&unix_seconds);
  constexpr double year_5138 = 1e11;  // keeps the milliseconds inside their integer
  if (value == nullptr || std::abs(*value) > year_5138) return std::nullopt;
  return Duration{std::llround(*value * 1000)};
}

}  // namespace tidewright::intake
