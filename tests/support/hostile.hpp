// Somebody on the broker who means harm, in a process of his own: says what a sensor would say,
// garbage, what is too large, too deep or no text, retained commands, topics with wildcards in
// them, topics of the daemon's own, a thousand times a second. Only the leak sensor's `wet` and the
// plug's OFF he leaves to the test.
#pragma once

#include <sys/types.h>

#include <atomic>
#include <cstdint>

namespace tidewright::support {

class Hostile {
 public:
  Hostile(int port, int per_second, std::uint64_t seed);
  ~Hostile();
  Hostile(const Hostile&) = delete;
  Hostile& operator=(const Hostile&) = delete;

  // Messages so far.
  std::uint64_t sent() const { return sent_->load(); }

 private:
  std::atomic<std::uint64_t>* sent_;  // shared with the process
  pid_t pid_;
};

}  // namespace tidewright::support
