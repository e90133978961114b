// The broker's refusals of a message or a subscription, in words.
#pragma once

#include <string>

namespace tidewright::mqtt {

// From here on a reason code of SUBACK or PUBACK is a refusal (MQTT 5, section 2.4).
inline constexpr int refused_from = 128;

// To stand in brackets after what was refused.
std::string refusal_words(int code);

}  // namespace tidewright::mqtt
