// What core says of an alarm in the same words every time, in German. Pure.
#pragma once

#include <optional>
#include <string_view>

namespace tidewright::panel {

struct Translated {
  std::string_view before;  // what stands before it, in English still
  std::string_view german;  // without its full stop
};

// `english`: a rule's title, or a text that ends with what is to be done about one. None if it is
// neither.
std::optional<Translated> in_german(std::string_view english);

}  // namespace tidewright::panel
