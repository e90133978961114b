// The daemon's one loop, on the decision thread: waits for whatever comes next and lets it happen.
#pragma once

#include "daemon/decision.hpp"
#include "daemon/inbox.hpp"

namespace tidewright {

// Stop signals (TERM, INT, HUP) must be blocked in every thread before any is made.
void block_stop_signals();

class Loop {
 public:
  Loop(const Surroundings& around, Inbox& inbox);
  ~Loop();
  Loop(const Loop&) = delete;
  Loop& operator=(const Loop&) = delete;

  // Returns after a stop signal, when every actuator has been told OFF and the broker has said so,
  // or 0.4 s later.
  void run();

 private:
  enum class Source : std::uint32_t { line, session, beat, deadline, inbox, disk, signal };
  void watch(int descriptor, Source source);
  void ready(Source source);
  void drain();
  void adopt();
  void beat();
  void stop();

  Surroundings around_;
  Inbox& inbox_;
  Decision decision_;
  int epoll_;
  int beat_;
  int deadline_;
  int signals_;
  bool stopping_ = false;
};

}  // namespace tidewright
