#include "daemon/waits.hpp"

#include <sys/epoll.h>
#include <sys/signalfd.h>
#include <sys/timerfd.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>

namespace tidewright {
namespace {

sigset_t stop_signals() {
  sigset_t set;
  sigemptyset(&set);
  for (int number : {SIGTERM, SIGINT, SIGHUP}) sigaddset(&set, number);
  return set;
}

int readable_by_stop_signals() {
  const sigset_t set = stop_signals();
  return signalfd(-1, &set, SFD_CLOEXEC | SFD_NONBLOCK);
}

timespec parts(std::chrono::nanoseconds span) {
  const auto seconds = std::chrono::floor<std::chrono::seconds>(span);
  return {seconds.count(), (span - seconds).count()};
}

}  // namespace

Timer::Timer() : Descriptor(timerfd_create(CLOCK_BOOTTIME, TFD_CLOEXEC | TFD_NONBLOCK)) {}

void Timer::set(std::chrono::nanoseconds delay, std::chrono::nanoseconds interval) {
  // 0 would disarm it.
  constexpr std::chrono::nanoseconds soonest = std::chrono::milliseconds{1};
  const itimerspec setting{parts(interval), parts(std::max(delay, soonest))};
  timerfd_settime(number(), 0, &setting, nullptr);
}

void Timer::taken() {
  std::uint64_t times = 0;
  [[maybe_unused]] const ssize_t size = read(number(), &times, sizeof times);
}

void block_stop_signals() {
  const sigset_t set = stop_signals();
  pthread_sigmask(SIG_BLOCK, &set, nullptr);
}

StopSignals::StopSignals() : Descriptor(readable_by_stop_signals()) {}

Waits::Waits() : Descriptor(epoll_create1(EPOLL_CLOEXEC)) {}

void Waits::add(int descriptor, std::uint32_t name) {
  epoll_event event{};
  event.events = EPOLLIN;
  event.data.u32 = name;
  epoll_ctl(number(), EPOLL_CTL_ADD, descriptor, &event);
}

std::optional<std::uint32_t> Waits::next() {
  epoll_event event{};
  if (epoll_wait(number(), &event, 1, -1) != 1) return std::nullopt;
  const std::uint32_t name = event.data.u32;
  return name;
}

}  // namespace tidewright
