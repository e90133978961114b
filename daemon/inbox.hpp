// What people ask and tell, on its way from the reporter's thread to the decision thread.
#pragma once

#include <mutex>
#include <variant>
#include <vector>

#include "core/event.hpp"
#include "daemon/base/descriptor.hpp"

namespace tidewright {

class Inbox {
 public:
  using Request = std::variant<Ask, Tell>;
  static constexpr std::size_t requests_max = 64;

  Inbox();

  // From any thread. False if 64 wait already: the request is not taken.
  bool post(const Request& request);
  // Readable (epoll) when take() has something; take() makes it unreadable again.
  int descriptor() const { return wake_.number(); }
  std::vector<Request> take();

 private:
  Descriptor wake_;
  std::mutex lock_;
  std::vector<Request> waiting_;
};

}  // namespace tidewright
