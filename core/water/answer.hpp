// What a formula of this folder answers: a number, a number with the remark that the formula was
// carried beyond what it was made for, or nothing and why. No NaN and no infinity is ever answered.
#pragma once

#include <cmath>
#include <optional>
#include <string_view>

namespace tidewright::water {

// What an input may be. Names and units are for people.
struct Range {
  std::string_view name;
  std::string_view unit;  // empty: a plain number
  double low;
  double high;
};

// An input that was not in its range.
struct Outside {
  Range range;
  double found;
};

// None if `found` is a number within the range.
constexpr std::optional<Outside> outside(const Range& range, double found) {
  if (found >= range.low && found <= range.high) return std::nullopt;
  return Outside{range, found};
}

// The first of several that is outside.
template <class... Others>
constexpr std::optional<Outside> first(const std::optional<Outside>& one, const Others&... others) {
  if constexpr (sizeof...(others) == 0) {
    return one;
  } else {
    return one ? one : first(others...);
  }
}

template <class T>
class Answer {
 public:
  Answer(T value) : value_(value) {}
  // Extrapolated, if `remark` is there.
  Answer(T value, const std::optional<Outside>& remark) : value_(value), outside_(remark) {}
  // Refused.
  Answer(const Outside& why) : outside_(why) {}

  // Whether there is a value; required by * and ->.
  explicit operator bool() const { return value_.has_value(); }
  const T& operator*() const { return *value_; }
  const T* operator->() const { return &*value_; }

  bool in_range() const { return value_ && !outside_; }
  // With a value: what it was extrapolated over. Without: why there is none.
  const std::optional<Outside>& outside() const { return outside_; }

 private:
  std::optional<T> value_;
  std::optional<Outside> outside_;
};

}  // namespace tidewright::water
