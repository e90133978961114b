// A name that nobody else has, for what is made once and kept on the disk.
#pragma once

#include <fmt/format.h>

#include <random>
#include <string>

namespace tidewright {

// 12 hex digits.
inline std::string new_instance() {
  std::random_device chance;
  return fmt::format("{:08x}{:04x}", chance(), chance() & 0xffffU);
}

}  // namespace tidewright
