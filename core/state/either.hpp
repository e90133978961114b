// For the walks over the state's fields, which serve a state that may change and one that may not.
#pragma once

#include <concepts>
#include <type_traits>

namespace tidewright::state {

// A `Struct`, const or not.
template <class T, class Struct>
concept Either = std::same_as<std::remove_const_t<T>, Struct>;

}  // namespace tidewright::state
