// How a receiver knows that a posted announcement comes from this daemon: HMAC-SHA256 as the
// Standard Webhooks specification has it (standardwebhooks.com, version 1), so that its libraries
// can check it.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace tidewright::post {

// The key in the text of a secret, `whsec_` and base64 of 24 to 64 bytes; none if it is not so.
std::optional<std::string> signing_key(std::string_view secret);

// The value of the `webhook-signature` header: `v1,` and base64.
std::string signature(std::string_view key, std::string_view id, std::int64_t unix_seconds,
                      std::string_view body);

}  // namespace tidewright::post
