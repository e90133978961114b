// A person's ask or tell as it comes over MQTT: JSON becomes core's Ask or Tell, or a refusal that
// says what was found, what was expected and what to do. The fields: docs/ask-and-tell.md.
// Pure; called by daemon/hub/desk.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>

#include "config/household.hpp"
#include "core/event.hpp"

namespace tidewright::hub {

enum class Verb : std::uint8_t { ask, tell };

// What every answer repeats, so that the one who asked knows it again.
struct About {
  Verb verb{};
  std::string what;  // `reset`, `measured`; as far as it could be read
  std::string id;    // the request's own `id`; may be empty
};

struct Request {
  About about;
  // core's Ask or Tell (ticket and token of a reset still 0), or why it is refused.
  std::variant<Ask, Tell, std::string> content;
};

Request read_request(Verb verb, std::string_view json, const config::Household& household);

}  // namespace tidewright::hub
