#include "daemon/intake/text.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <initializer_list>

namespace tidewright::intake {
namespace {

bool same_letters(std::string_view a, std::string_view lower) {
  return std::equal(a.begin(), a.end(), lower.begin(), lower.end(), [](char x, char y) {
    return (x >= 'A' && x <= 'Z' ? static_cast<char>(x - 'A' + 'a') : x) == y;
  });
}

bool one_of(std::string_view text, std::initializer_list<std::string_view> lower_words) {
  return std::any_of(lower_words.begin(), lower_words.end(),
                     [&](std::string_view word) { return same_letters(text, word); });
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

}  // namespace tidewright::intake
