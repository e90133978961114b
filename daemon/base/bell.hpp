// Wakes one thread from any other. Whoever rings takes no lock, so that a thread that goes first
// never waits for one that was stopped in the middle of ringing.
#pragma once

#include <semaphore.h>

#include <chrono>
#include <ctime>

namespace tidewright {

class Bell {
 public:
  Bell() { sem_init(&rings_, 0, 0); }
  ~Bell() { sem_destroy(&rings_); }
  Bell(const Bell&) = delete;
  Bell& operator=(const Bell&) = delete;

  // From any thread.
  void ring() { sem_post(&rings_); }

  // By the one thread that listens: returns once it has rung since the last call, or at `until`.
  void wait_until(std::chrono::steady_clock::time_point until) {
    using std::chrono::nanoseconds;
    using std::chrono::seconds;
    const nanoseconds since = until.time_since_epoch();
    const auto whole = std::chrono::floor<seconds>(since);
    const timespec end{whole.count(), (since - whole).count()};
    // The steady clock is CLOCK_MONOTONIC. Interrupted by a signal is woken too early, no harm.
    if (sem_clockwait(&rings_, CLOCK_MONOTONIC, &end) != 0) return;
    while (sem_trywait(&rings_) == 0) {
    }
  }

 private:
  sem_t rings_{};
};

}  // namespace tidewright
