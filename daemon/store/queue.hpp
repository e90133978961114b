// Two ways to hand values from one thread to another without either ever waiting. Each has exactly
// one thread that gives and one that takes.
#pragma once

#include <array>
#include <atomic>
#include <cstddef>
#include <cstdint>

namespace tidewright::store {

// First in, first out, up to `Capacity` values; each is taken.
template <class T, std::size_t Capacity>
class Queue {
 public:
  // The giver's: the place for the next value, or nullptr when full; then hand it over.
  T* place() {
    const auto given = given_.load(std::memory_order_relaxed);
    if (given - taken_.load(std::memory_order_acquire) == Capacity) return nullptr;
    return &values_[given % Capacity];
  }
  void hand_over() { given_.store(given_.load(std::memory_order_relaxed) + 1); }

  // The taker's: how many stand in the queue, the i-th of them, and that the first few are done.
  std::size_t size() const { return given_.load() - taken_.load(std::memory_order_relaxed); }
  const T& operator[](std::size_t i) const {
    return values_[(taken_.load(std::memory_order_relaxed) + i) % Capacity];
  }
  void done(std::size_t count) { taken_.store(taken_.load() + count, std::memory_order_release); }

 private:
  std::array<T, Capacity> values_{};
  std::atomic<std::size_t> given_{0};
  std::atomic<std::size_t> taken_{0};
};

// Only the newest value is ever taken. Three buffers: one is being written, one is being read, and
// the newest finished one lies between.
template <class T>
class Latest {
 public:
  // The giver's.
  T& draft() { return buffers_[draft_]; }
  void hand_over() { draft_ = between_.exchange(draft_ | fresh) & ~fresh; }

  // The taker's: current() is the newest from now on; false if it already was.
  bool take() {
    if ((between_.load() & fresh) == 0) return false;
    current_ = between_.exchange(current_) & ~fresh;
    return true;
  }
  const T& current() const { return buffers_[current_]; }

 private:
  static constexpr unsigned fresh = 4;

  std::array<T, 3> buffers_{};
  std::atomic<unsigned> between_{1};
  unsigned draft_ = 0;
  unsigned current_ = 2;
};

}  // namespace tidewright::store
