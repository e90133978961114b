// What a person typed after `tidewright ask` or `tidewright tell`, and the request that it is.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "daemon/hub/request.hpp"

namespace tidewright::commands {

// As typed: `tidewright ask shelve vat_low --minutes 60 --who ann`.
struct Typed {
  hub::Verb verb{};
  std::vector<std::string> words;  // {"shelve", "vat_low"}
  std::string who;
  std::optional<double> minutes{};
  std::optional<std::uint32_t> occurrence{};
  std::string why{};  // empty: not given
  bool json = false;  // print the daemon's answer as it came
};

struct Usage {
  std::string problem;  // what is wrong and how it is typed, for a person
};

// The words in the order of the request's fields (docs/ask-and-tell.md). Only their number is
// checked here: what they say, the daemon judges.
std::variant<std::string, Usage> as_request(const Typed& typed, const std::string& id);

// The request that confirms a reset with the token of its answer.
std::string confirmation(const Typed& reset, std::uint32_t token, const std::string& id);

}  // namespace tidewright::commands
