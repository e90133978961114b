// CRC-32 as zip and Ethernet know it (polynomial 0x04C11DB7, reflected, both ends inverted):
// finds a cut line or a flipped bit, not a forgery.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

namespace tidewright::store {

namespace detail {

constexpr std::array<std::uint32_t, 256> crc_table = [] {
  std::array<std::uint32_t, 256> table{};
  for (std::uint32_t i = 0; i < table.size(); ++i) {
    std::uint32_t rest = i;
    for (int bit = 0; bit < 8; ++bit) rest = (rest >> 1U) ^ ((rest & 1U) * 0xEDB88320U);
    table[i] = rest;
  }
  return table;
}();

}  // namespace detail

constexpr std::uint32_t checksum(std::string_view bytes) {
  std::uint32_t rest = ~0U;
  for (const char c : bytes) {
    rest = (rest >> 8U) ^ detail::crc_table[(rest ^ static_cast<std::uint8_t>(c)) & 0xFFU];
  }
  return ~rest;
}

}  // namespace tidewright::store
