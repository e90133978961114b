// A vector that owns its room and never grows past it, and text of the same kind.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

namespace tidewright {

// Up to `Capacity` values in place. Pushing to a full one refuses and remembers that it did.
template <class T, std::size_t Capacity>
class Bounded {
 public:
  bool push(const T& value) {
    if (size_ == Capacity) {
      overflowed_ = true;
      return false;
    }
    items_[size_++] = value;
    return true;
  }
  void clear() {
    size_ = 0;
    overflowed_ = false;
  }
  bool overflowed() const { return overflowed_; }
  std::size_t size() const { return size_; }
  bool empty() const { return size_ == 0; }
  const T* begin() const { return items_.data(); }
  const T* end() const { return items_.data() + size_; }
  const T& operator[](std::size_t i) const { return items_[i]; }

 private:
  std::array<T, Capacity> items_{};
  std::size_t size_ = 0;
  bool overflowed_ = false;
};

// Up to `Capacity` bytes of text in place; what does not fit is cut off.
template <std::size_t Capacity>
class ShortText {
 public:
  ShortText() = default;
  ShortText(std::string_view text) {  // NOLINT(google-explicit-constructor): text is text
    for (char c : text.substr(0, Capacity)) bytes_[size_++] = c;
  }
  std::string_view view() const { return {bytes_.data(), size_}; }
  bool empty() const { return size_ == 0; }
  friend bool operator==(const ShortText& a, const ShortText& b) { return a.view() == b.view(); }

 private:
  std::array<char, Capacity> bytes_{};
  std::uint8_t size_ = 0;
};

}  // namespace tidewright
