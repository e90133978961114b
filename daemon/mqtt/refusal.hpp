// The broker's refusals of a message or a subscription, in words.
#pragma once

#include <string>

namespace tidewright::mqtt {

// From here on a reason code of SUBACK or PUBACK is a refusal (MQTT 5, section 2.4).
inline constexpr int refused_from = 128;

// To stand in brackets after what was refused.
std::string refusal_words(int code);

// What a person is told of it, on the report line. `deed`: read or write.
std::string refusal_of_ours(std::string_view deed, std::string_view topic, std::string_view base,
                            int code);
std::string refusal_of_hub(std::string_view deed, std::string_view topic, int code);

}  // namespace tidewright::mqtt
