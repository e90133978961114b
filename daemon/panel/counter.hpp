// The counter between the panel's threads and the reporter's: requests are handed in here and their
// answers waited for, so that one desk decides for MQTT and for the panel. By any thread.
#pragma once

#include <chrono>
#include <condition_variable>
#include <cstdint>
#include <deque>
#include <functional>
#include <map>
#include <mutex>
#include <optional>

#include "daemon/hub/desk.hpp"

namespace tidewright::panel {

class Counter {
 public:
  static constexpr std::size_t letters_most = 8;

  // By the panel's threads: what became of it. None if nobody answers within `patience`, if so many
  // wait already, or if it is not open. What nobody has taken by then is not carried out any more.
  std::optional<hub::Outcome> ask(hub::Letter letter, std::chrono::milliseconds patience);

  // By the reporter, which is called by `wake` when there is a letter; `wake` must not wait.
  void open(std::function<void()> wake);
  // Nobody answers any more; who waits goes home.
  void close();
  // The next letter, with a question's number of its own.
  std::optional<hub::Letter> next();
  void answer(std::uint64_t question, hub::Outcome outcome);

 private:
  std::mutex lock_;  // of all that follows
  std::condition_variable answered_;
  std::function<void()> wake_;  // empty: closed
  std::deque<hub::Letter> letters_;
  std::map<std::uint64_t, std::optional<hub::Outcome>> waiting_;  // by question
  std::uint64_t last_ = 0;
};

}  // namespace tidewright::panel
