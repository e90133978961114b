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

std::string refusal_of_ours(std::string_view deed, std::string_view topic, std::string_view base,
                            int code) {
  const std::string_view lost = deed == "write" ? "nobody sees what is published there"
                                                : "nobody can ask or tell us anything";
  return fmt::format(
      "The broker does not let us {} {} ({}): {}. Allow us to read and write {}/# in the broker's "
      "access list.",
      deed, topic, refusal_words(code), lost, base);
}

std::string refusal_of_hub(std::string_view deed, std::string_view topic, int code) {
  return fmt::format(
      "The broker does not let us {} {} ({}): a hub does not show the room by itself. Allow it in "
      "the broker's access list, or write discovery = false under [hub].",
      deed, topic, refusal_words(code));
}

}  // namespace tidewright::mqtt
