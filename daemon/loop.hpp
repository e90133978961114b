// The daemon's one loop, on the decision thread: waits for whatever comes next and lets it happen.
#pragma once

#include "daemon/decision.hpp"
#include "daemon/inbox.hpp"
#include "daemon/waits.hpp"

namespace tidewright {

class Loop {
 public:
  // Requires block_stop_signals() before.
  Loop(const Surroundings& around, Inbox& inbox);

  // Returns after a stop signal, when every actuator has been told OFF and the broker has said so,
  // or 0.4 s later.
  void run();

 private:
  enum class Source : std::uint32_t {
    line,
    session,
    beat,
    deadline,
    glance,
    inbox,
    disk,
    stop_signal
  };
  void wait_for(int descriptor, Source source);
  void ready(Source source);
  void drain();
  void adopt();
  void beat();
  void stop();

  Surroundings around_;
  Inbox& inbox_;
  Decision decision_;
  Waits waits_;
  Timer beat_;
  Timer deadline_;
  Timer glance_;  // at what is new, once the disk has had the time to take it
  StopSignals stop_signals_;
  bool glance_is_set_ = false;
  bool stopping_ = false;
};

}  // namespace tidewright
