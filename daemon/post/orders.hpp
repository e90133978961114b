// What the daemon gives the courier on its standard input, and the answer on its standard output.
// Pure. No secret is among it, only the files in which they are.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "config/household.hpp"
#include "daemon/post/letter.hpp"

namespace tidewright::post {

struct Orders {
  std::optional<config::Webhook> webhook;
  std::optional<config::Mail> mail;
  std::vector<Letter> letters;
};

// One JSON document.
std::string to_text(const Orders&);
// None if it is not such a document.
std::optional<Orders> orders_of(std::string_view text);

// One line of JSON, with its end.
std::string to_text(const Outcome&);
std::optional<Outcome> outcome_of(std::string_view line);

}  // namespace tidewright::post
