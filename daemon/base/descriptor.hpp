// A file descriptor that closes itself. Used by whatever in the daemon holds one.
#pragma once

#include <unistd.h>

namespace tidewright {

class Descriptor {
 public:
  // Takes it over; a negative number is none.
  explicit Descriptor(int number) : number_(number) {}
  ~Descriptor() {
    if (number_ >= 0) close(number_);
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  int number() const { return number_; }

 private:
  int number_;
};

}  // namespace tidewright
