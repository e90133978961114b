#include "daemon/store/value_text.hpp"

#include <array>

namespace tidewright::store {
namespace {

template <class Things>
void put_thing(std::string& out, const Things& things, std::uint8_t index) {
  if (index == no_subject) {
    out += '-';
  } else if (index < things.size()) {
    out += things[index].id;
  } else {
    out += '#';
    put(out, index);
  }
}

template <class Things>
bool get_thing(std::string_view text, const Things& things, std::uint8_t& index) {
  if (text == "-") {
    index = no_subject;
    return true;
  }
  if (text.starts_with('#')) return get(text.substr(1), index);
  for (std::size_t i = 0; i < things.size(); ++i) {
    if (things[i].id == text) {
      index = static_cast<std::uint8_t>(i);
      return true;
    }
  }
  return false;
}

// Cuts the next word off `text`.
std::string_view next_word(std::string_view& text) {
  const auto space = std::min(text.find(' '), text.size());
  const auto word = text.substr(0, space);
  text.remove_prefix(std::min(space + 1, text.size()));
  return word;
}

}  // namespace

void put_escaped(std::string& out, std::string_view bytes, bool spaces_stay) {
  for (const char c : bytes) {
    const auto byte = static_cast<unsigned char>(c);
    const bool plain = byte > ' ' && byte < 0x7f && c != '%';
    if (plain || (c == ' ' && spaces_stay)) {
      out += c;
    } else {
      fmt::format_to(std::back_inserter(out), "%{:02X}", byte);
    }
  }
}

bool get_escaped(std::string_view text, std::string& bytes) {
  bytes.clear();
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] != '%') {
      bytes += text[i];
      continue;
    }
    unsigned byte = 0;
    const auto digits = text.substr(i + 1, 2);
    const auto [end, error] =
        std::from_chars(digits.data(), digits.data() + digits.size(), byte, 16);
    if (error != std::errc{} || digits.size() != 2 || end != digits.data() + 2) return false;
    bytes += static_cast<char>(byte);
    i += 2;
  }
  return true;
}

namespace {

template <std::size_t capacity>
bool get_short(std::string_view text, ShortText<capacity>& read) {
  std::string bytes;
  if (!get_escaped(text, bytes)) return false;
  read = ShortText<capacity>{bytes};
  return read.view() == bytes;
}

}  // namespace

void put(std::string& out, const Name& who) { put_escaped(out, who.view(), false); }
bool get(std::string_view text, Name& who) { return get_short(text, who); }
void put(std::string& out, const Remark& remark) { put_escaped(out, remark.view(), false); }
bool get(std::string_view text, Remark& remark) { return get_short(text, remark); }

void put_instrument(std::string& out, const room::Room& room, std::uint8_t index) {
  put_thing(out, room.instruments, index);
}
void put_actuator(std::string& out, const room::Room& room, std::uint8_t index) {
  put_thing(out, room.actuators, index);
}
void put_supply(std::string& out, const room::Room& room, std::uint8_t index) {
  put_thing(out, room.supplies, index);
}
bool get_instrument(std::string_view text, const room::Room& room, std::uint8_t& index) {
  return get_thing(text, room.instruments, index);
}
bool get_actuator(std::string_view text, const room::Room& room, std::uint8_t& index) {
  return get_thing(text, room.actuators, index);
}
bool get_supply(std::string_view text, const room::Room& room, std::uint8_t& index) {
  return get_thing(text, room.supplies, index);
}

namespace {

bool get_subject(std::string_view text, const room::Room& room, Subject kind, std::uint8_t& index) {
  if (kind == Subject::actuator) return get_actuator(text, room, index);
  if (kind == Subject::supply) return get_supply(text, room, index);
  return get_instrument(text, room, index);
}

}  // namespace

void put(std::string& out, const room::Room& room, const Reason& reason) {
  put(out, reason.why);
  out += ' ';
  switch (subject_of(reason.why)) {
    case Subject::instrument:
      put_instrument(out, room, reason.subject);
      break;
    case Subject::actuator:
      put_actuator(out, room, reason.subject);
      break;
    case Subject::supply:
      put_supply(out, room, reason.subject);
      break;
    case Subject::nothing:
      put_thing(out, std::array<room::Vat, 0>{}, reason.subject);
      break;
  }
  for (const float number : reason.numbers) {
    out += ' ';
    put(out, number);
  }
}

bool get(std::string_view text, const room::Room& room, Reason& reason) {
  Reason read;
  if (!get(next_word(text), read.why)) return false;
  const auto subject = next_word(text);
  if (!get_subject(subject, room, subject_of(read.why), read.subject)) read.subject = no_subject;
  for (float& number : read.numbers) {
    if (!get(next_word(text), number)) return false;
  }
  reason = read;
  return text.empty();
}

}  // namespace tidewright::store
