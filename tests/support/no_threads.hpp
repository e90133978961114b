// A process that can start no thread, as where its limit of tasks is reached.
#pragma once

#include <pthread.h>

#include <cstddef>

namespace tidewright::support {

// While it lives, each new thread wants a stack that no memory holds, and so there is none.
class NoThreads {
 public:
  NoThreads() {
    pthread_getattr_default_np(&before_);
    pthread_attr_t vast;
    pthread_attr_init(&vast);
    pthread_attr_setstacksize(&vast, std::size_t{1} << 60);
    pthread_setattr_default_np(&vast);
    pthread_attr_destroy(&vast);
  }
  ~NoThreads() {
    pthread_setattr_default_np(&before_);
    pthread_attr_destroy(&before_);
  }
  NoThreads(const NoThreads&) = delete;
  NoThreads& operator=(const NoThreads&) = delete;

 private:
  pthread_attr_t before_;
};

}  // namespace tidewright::support
