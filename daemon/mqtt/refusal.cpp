#include "daemon/mqtt/refusal.hpp"

#include <fmt/format.h>

namespace tidewright::mqtt {

// MQTT 5, table 2-6; 128 is also the only refusal of a subscription that MQTT 3.1.1 knows.
std::string refusal_words(int code) {
  switch (code) {
    case 128:
      return "refused, reason 128";
    case 135:
      return "not allowed, reason 135";
    case 143:
    case 144:
      return fmt::format("it does not like the topic, reason {}", code);
    case 151:
      return "its quota is used up, reason 151";
    default:
      return fmt::format("reason {}", code);
  }
}

}  // namespace tidewright::mqtt
