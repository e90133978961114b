// Looks up single values in a JSON document without building it: one pass, bounded in depth,
// refusing what two readers could understand differently.
// Called by daemon/intake only.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "daemon/intake/intake.hpp"

namespace tidewright::intake {

// The value that a pointer leads to.
struct Leaf {
  enum class Kind : std::uint8_t { null, boolean, number, text, structure };
  Kind kind{};
  double number = 0;
  std::string text;  // of a text; of a number or boolean, as it is written
};

// The reference tokens of a JSON Pointer (RFC 6901, sections 3 and 4), unescaped.
// None if it is no pointer: it must be empty or begin with '/'.
std::optional<std::vector<std::string>> pointer_tokens(std::string_view pointer);

// What each pointer leads to, in the same order; none where it leads nowhere. At most
// json_depth_max objects and arrays inside one another, no key twice in an object
// (RFC 8259, section 4, leaves the meaning of that open).
std::variant<std::vector<std::optional<Leaf>>, Refused> find_leaves(
    std::string_view json, const std::vector<std::string_view>& pointers);

}  // namespace tidewright::intake
