#include "daemon/panel/style.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "daemon/panel/alarm_words.hpp"
#include "daemon/panel/html.hpp"

namespace tidewright::panel {
namespace {

using std::chrono::sys_seconds;

constexpr double litres_in_gallon = 3.785411784;  // US liquid gallon: NIST SP 811, appendix B.8
constexpr double psi_in_bar = 14.503773773;       // the same

bool is_digit(char c) { return c >= '0' && c <= '9'; }

// The whole number at `at`, of `digits` digits; -1 if there are none.
int digits(std::string_view text, std::size_t at, std::size_t count) {
  int value = 0;
  for (std::size_t i = at; i < at + count; ++i) {
    if (i >= text.size() || !is_digit(text[i])) return -1;
    value = value * 10 + (text[i] - '0');
  }
  return value;
}

// "96.2" at `at`: where it ends; `at` if there is none.
std::size_t number_end(std::string_view text, std::size_t at) {
  std::size_t end = at;
  if (end < text.size() && text[end] == '-') ++end;
  const std::size_t first = end;
  while (end < text.size() && is_digit(text[end])) ++end;
  if (end == first) return at;
  if (end + 1 < text.size() && text[end] == '.' && is_digit(text[end + 1])) {
    do {
      ++end;
    } while (end < text.size() && is_digit(text[end]));
  }
  return end;
}

struct Conversion {
  std::string_view from;
  std::string_view to;
  double factor;
  double offset;
};
constexpr Conversion to_us[] = {{"L/day", "gal/day", 1 / litres_in_gallon, 0},
                                {"L/h", "gal/h", 1 / litres_in_gallon, 0},
                                {"L", "gal", 1 / litres_in_gallon, 0},
                                {"°C", "°F", 1.8, 32},
                                {"bar", "psi", psi_in_bar, 0}};

// The unit that stands at `at`, as a whole word.
const Conversion* unit_at(std::string_view text, std::size_t at) {
  for (const Conversion& unit : to_us) {
    if (text.substr(at, unit.from.size()) != unit.from) continue;
    const std::size_t end = at + unit.from.size();
    const char next = end < text.size() ? text[end] : ' ';
    if (std::isalpha(static_cast<unsigned char>(next)) == 0 && next != '/') return &unit;
  }
  return nullptr;
}

// What core writes between two backticks is to be typed as it is.
std::string with_code(std::string html) {
  for (;;) {
    const std::size_t from = html.find('`');
    const std::size_t to = from == html.npos ? from : html.find('`', from + 1);
    if (to == html.npos) return html;
    html.replace(to, 1, "</code>");
    html.replace(from, 1, "<code>");
  }
}

std::string in_english(const std::string& html) { return element("span", " lang=\"en\"", html); }

}  // namespace

std::optional<sys_seconds> local_time(std::string_view iso) {
  const int year = digits(iso, 0, 4), month = digits(iso, 5, 2), day = digits(iso, 8, 2);
  if (year < 0 || month < 1 || day < 1) return std::nullopt;
  const auto date = std::chrono::year{year} / month / day;
  if (!date.ok()) return std::nullopt;
  sys_seconds time = std::chrono::sys_days{date};
  if (iso.size() >= 19) {
    const int hour = digits(iso, 11, 2), minute = digits(iso, 14, 2), second = digits(iso, 17, 2);
    if (hour < 0 || minute < 0 || second < 0) return std::nullopt;
    time += std::chrono::hours{hour} + std::chrono::minutes{minute} + std::chrono::seconds{second};
  }
  return time;
}

std::string Style::number(double value) const {
  std::string text = fmt::format("{:.{}f}", value, std::abs(value) >= 99.95 ? 0 : 1);
  if (text.ends_with(".0")) text.resize(text.size() - 2);
  if (text == "-0") text = "0";
  if (const std::size_t point = text.find('.'); point != text.npos) {
    text.replace(point, 1, word(Word::decimal_sign));
  }
  return text;
}

std::string Style::litres(double value) const {
  return panel_.us_units ? number(value / litres_in_gallon) + " gal" : number(value) + " L";
}

std::string Style::litres_an_hour(double value) const { return litres(value) + "/h"; }

std::string Style::lasting(std::chrono::minutes span) const {
  const auto minutes = std::max<long>(1, static_cast<long>(span.count()));
  if (minutes < 90) return fmt::format("{} min", minutes);
  const auto whole_hours = minutes / 60;
  if (whole_hours >= 48) return said(Word::days, std::to_string((whole_hours + 12) / 24));
  if (minutes % 60 == 0) return fmt::format("{} h", whole_hours);
  return fmt::format("{} h {} min", whole_hours, minutes % 60);
}

std::string Style::time_of_day(sys_seconds local) const {
  const auto minutes = std::chrono::floor<std::chrono::minutes>(
      local - std::chrono::floor<std::chrono::days>(local));
  const auto hour = minutes.count() / 60, minute = minutes.count() % 60;
  if (!panel_.twelve_hours) return fmt::format("{:02}:{:02}", hour, minute);
  return fmt::format("{}:{:02} {}", hour % 12 == 0 ? 12 : hour % 12, minute,
                     hour < 12 ? "am" : "pm");
}

std::string Style::day(sys_seconds local) const {
  const std::chrono::year_month_day date{std::chrono::floor<std::chrono::days>(local)};
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()),
                     static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
}

std::string Style::time(std::string_view iso, std::string_view now) const {
  const auto at = local_time(iso), today = local_time(now);
  if (!at || !today) return std::string(iso);
  using std::chrono::days;
  const auto ahead = std::chrono::floor<days>(*at) - std::chrono::floor<days>(*today);
  if (ahead == days{0}) return time_of_day(*at);
  if (ahead == days{1}) return said(Word::tomorrow, time_of_day(*at));
  if (ahead == days{-1}) return said(Word::yesterday, time_of_day(*at));
  return day(*at) + " " + time_of_day(*at);
}

std::string Style::rewritten(std::string_view english) const {
  std::string text;
  for (std::size_t i = 0; i < english.size();) {
    const bool begins = i == 0 || std::isalnum(static_cast<unsigned char>(english[i - 1])) == 0;
    const std::size_t end = begins ? number_end(english, i) : i;
    if (end == i) {
      text += english[i++];
      continue;
    }
    const std::string_view figure = english.substr(i, end - i);
    const Conversion* unit =
        end < english.size() && english[end] == ' ' ? unit_at(english, end + 1) : nullptr;
    if (panel_.us_units && unit != nullptr) {
      const double value = std::strtod(std::string(figure).c_str(), nullptr);
      text += fmt::format("{} {}", number(value * unit->factor + unit->offset), unit->to);
      i = end + 1 + unit->from.size();
    } else if (panel_.twelve_hours && figure.size() == 2 && end < english.size() &&
               english[end] == ':' && digits(english, end + 1, 2) >= 0) {
      text += time_of_day(sys_seconds{std::chrono::hours{digits(english, i, 2)} +
                                      std::chrono::minutes{digits(english, end + 1, 2)}});
      i = end + 3;
    } else {
      text += figure;
      i = end;
    }
  }
  if (!text.empty() && text.back() != '.' && text.back() != '?') text += '.';
  return capital(std::move(text));
}

Style::Figure Style::figure(double value, std::string_view unit) const {
  const Conversion* conversion = panel_.us_units ? unit_at(unit, 0) : nullptr;
  if (conversion == nullptr) return {value, std::string(unit)};
  return {value * conversion->factor + conversion->offset, std::string(conversion->to)};
}

std::string Style::metric(const std::string& typed, std::string_view unit) const {
  const Conversion* conversion = panel_.us_units ? unit_at(unit, 0) : nullptr;
  std::string text = typed;
  std::replace(text.begin(), text.end(), ',', '.');
  const std::size_t end = number_end(text, 0);
  if (conversion == nullptr || end == 0 || end != text.size()) return typed;
  const double value = std::strtod(text.c_str(), nullptr);
  return fmt::format("{:.6g}", (value - conversion->offset) / conversion->factor);
}

std::string Style::of_core(std::string_view english) const {
  if (panel_.language == config::Language::english) return escaped(english);
  if (const auto known = in_german(english)) return escaped(known->german);
  return in_english(escaped(english));
}

std::string Style::phrase(Word which, std::string_view english) const {
  return fmt::format(fmt::runtime(escaped(word(which))), fmt::arg("a", of_core(english)));
}

std::string Style::capital(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  }
  return text;
}

std::string Style::sentence(const std::string& english) const {
  std::string html = with_code(escaped(rewritten(english)));
  if (panel_.language == config::Language::english || html.empty()) return html;
  const auto known = in_german(english);
  if (!known) return in_english(html);
  std::string german = with_code(escaped(std::string(known->german) + "."));
  if (known->before.empty()) return german;
  return in_english(with_code(escaped(rewritten(known->before)))) + " " + german;
}

}  // namespace tidewright::panel
