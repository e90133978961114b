// How far a value may be believed. Danger is believed at any quality but garbage; safety only at
// good.
#pragma once

#include <cstdint>

namespace tidewright {

enum class Quality : std::uint8_t { bad, uncertain, good };

// The four device states of NAMUR NE 107, and none of them.
enum class DeviceStatus : std::uint8_t {
  normal,
  failure,
  check_function,
  out_of_specification,
  maintenance_required,
};

}  // namespace tidewright
