// Writes JSON by hand, field by field, in the order in which they are added: what a person reads
// in a broker's browser is then in a sensible order, with numbers as they were rounded.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tidewright::hub {

// A text as a JSON string with its quotes; bytes that are not UTF-8 become U+FFFD.
std::string as_json(std::string_view text);
std::string as_json(const std::vector<std::string>& list);

// `value` with that many decimals, a '.', no exponent and no "-0".
std::string decimal(double value, int decimals);

// An object, member by member; `json` is JSON already.
class ObjectText {
 public:
  ObjectText& add(std::string_view name, std::string_view json);
  std::string closed() const { return text_ + "}"; }
  // How long it is so far: what is added later begins here.
  std::size_t size() const { return text_.size(); }

 private:
  std::string text_ = "{";
};

}  // namespace tidewright::hub
