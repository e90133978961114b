// Every request a person can make, and its fields. One row each: what is read, what a refusal
// lists, and what docs/ask-and-tell.md must hold (a test compares them).
#pragma once

#include <initializer_list>
#include <span>
#include <string_view>
#include <variant>
#include <vector>

#include "core/event.hpp"
#include "daemon/hub/request.hpp"

namespace tidewright::hub {

struct RequestKind {
  std::string_view name;  // `reset`
  std::variant<AskKind, TellKind> kind;
  std::vector<std::string_view> required;  // fields, besides `who`
  std::vector<std::string_view> optional;  // fields, besides `id`
};

std::span<const RequestKind> request_kinds(Verb verb);
// `ask` or `tell`: the name of its first field, and of its topic.
std::string_view verb_name(Verb verb);

}  // namespace tidewright::hub
