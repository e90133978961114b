// One value as text and back: what the state's text and the journal's lines are made of.
// Numbers are written in full (shortest text that reads back the same), whatever the locale.
#pragma once

#include <fmt/format.h>

#include <charconv>
#include <concepts>
#include <string>
#include <string_view>
#include <type_traits>

#include "core/base/reason.hpp"
#include "core/base/units.hpp"
#include "core/event.hpp"
#include "core/room/room.hpp"
#include "daemon/store/names.hpp"

namespace tidewright::store {

template <class T>
concept Number = std::is_arithmetic_v<T> && !std::same_as<T, bool>;

template <Number T>
void put(std::string& out, T number) {
  fmt::format_to(std::back_inserter(out), "{}", number);
}
template <Number T>
bool get(std::string_view text, T& number) {
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  return error == std::errc{} && end == text.data() + text.size();
}

void put(std::string& out, std::same_as<bool> auto yes) { out += yes ? '1' : '0'; }
bool get(std::string_view text, std::same_as<bool> auto& yes) {
  yes = text == "1";
  return yes || text == "0";
}

template <class Unit>
void put(std::string& out, Amount<Unit> amount) {
  put(out, amount.value);
}
template <class Unit>
bool get(std::string_view text, Amount<Unit>& amount) {
  return get(text, amount.value);
}

template <class Rep, class Period>
void put(std::string& out, std::chrono::duration<Rep, Period> duration) {
  put(out, duration.count());
}
// What is further off is no time but damage; so the sums of what was read stay within bounds.
inline constexpr std::chrono::hours longest_believed{24 * 365 * 10'000};

template <class Rep, class Period>
bool get(std::string_view text, std::chrono::duration<Rep, Period>& duration) {
  Rep count{};
  if (!get(text, count)) return false;
  duration = std::chrono::duration<Rep, Period>{count};
  return duration <= longest_believed && duration >= -longest_believed;
}

inline void put(std::string& out, Instant instant) { put(out, instant.time_since_epoch()); }
inline bool get(std::string_view text, Instant& instant) {
  Duration since_epoch{};
  const bool believed = get(text, since_epoch);
  instant = Instant{since_epoch};
  return believed || instant == never;
}

template <class Enum>
requires std::is_enum_v<Enum>
void put(std::string& out, Enum value) { out += name(value); }
template <class Enum>
requires std::is_enum_v<Enum>
bool get(std::string_view text, Enum& value) {
  const auto found = named<Enum>(text);
  if (found) value = *found;
  return found.has_value();
}

// Bytes that would break a line are written as %XX; spaces too unless they may stay.
void put_escaped(std::string& out, std::string_view bytes, bool spaces_stay);
bool get_escaped(std::string_view text, std::string& bytes);

void put(std::string& out, const Name& who);
bool get(std::string_view text, Name& who);
void put(std::string& out, const Remark& remark);
bool get(std::string_view text, Remark& remark);

// An instrument, actuator or supply by its id; `-` for none, `#` and the index where it has no
// name.
void put_instrument(std::string& out, const room::Room&, std::uint8_t index);
void put_actuator(std::string& out, const room::Room&, std::uint8_t index);
void put_supply(std::string& out, const room::Room&, std::uint8_t index);
// False if the room has no such thing.
bool get_instrument(std::string_view text, const room::Room&, std::uint8_t& index);
bool get_actuator(std::string_view text, const room::Room&, std::uint8_t& index);
bool get_supply(std::string_view text, const room::Room&, std::uint8_t& index);

// `wet floor 1 0 0`: the reason's word, its subject, its three numbers. A subject that the room
// no longer has is read as none.
void put(std::string& out, const room::Room&, const Reason&);
bool get(std::string_view text, const room::Room&, Reason&);

}  // namespace tidewright::store
