#include "daemon/inbox.hpp"

#include <sys/eventfd.h>
#include <unistd.h>

#include <cstdint>
#include <utility>

namespace tidewright {

Inbox::Inbox() : wake_(eventfd(0, EFD_CLOEXEC | EFD_NONBLOCK)) {}

bool Inbox::post(const Request& request) {
  const std::lock_guard guard(lock_);
  if (waiting_.size() == requests_max) return false;
  waiting_.push_back(request);
  const std::uint64_t one = 1;
  return write(descriptor(), &one, sizeof one) == sizeof one;
}

std::vector<Inbox::Request> Inbox::take() {
  const std::lock_guard guard(lock_);
  std::uint64_t count = 0;
  if (read(descriptor(), &count, sizeof count) < 0) return {};
  return std::exchange(waiting_, {});
}

}  // namespace tidewright
