#include "daemon/loop.hpp"

#include <poll.h>
#include <sys/epoll.h>
#include <sys/signalfd.h>
#include <sys/timerfd.h>
#include <unistd.h>

#include <array>
#include <csignal>

#include "daemon/log/log.hpp"

namespace tidewright {
namespace {

sigset_t stop_signals() {
  sigset_t set;
  sigemptyset(&set);
  for (int number : {SIGTERM, SIGINT, SIGHUP}) sigaddset(&set, number);
  return set;
}

// First after `delay`, then every `interval`; 0 = once.
void set_timer(int timer, std::chrono::nanoseconds delay, std::chrono::nanoseconds interval) {
  const auto spec = [](std::chrono::nanoseconds t) {
    return timespec{t.count() / 1'000'000'000, t.count() % 1'000'000'000};
  };
  // A delay of 0 would disarm the timer.
  constexpr std::chrono::milliseconds soonest{1};
  const itimerspec setting{spec(interval),
                           spec(std::max<std::chrono::nanoseconds>(delay, soonest))};
  timerfd_settime(timer, 0, &setting, nullptr);
}

void read_off(int descriptor) {
  std::array<char, sizeof(signalfd_siginfo)> bytes;
  [[maybe_unused]] const ssize_t size = read(descriptor, bytes.data(), bytes.size());
}

}  // namespace

void block_stop_signals() {
  const sigset_t set = stop_signals();
  pthread_sigmask(SIG_BLOCK, &set, nullptr);
  std::signal(SIGPIPE, SIG_IGN);
}

Loop::Loop(const Surroundings& around, Inbox& inbox)
    : around_(around),
      inbox_(inbox),
      decision_(around),
      epoll_(epoll_create1(EPOLL_CLOEXEC)),
      beat_(timerfd_create(CLOCK_BOOTTIME, TFD_CLOEXEC | TFD_NONBLOCK)),
      deadline_(timerfd_create(CLOCK_BOOTTIME, TFD_CLOEXEC | TFD_NONBLOCK)) {
  const sigset_t set = stop_signals();
  signals_ = signalfd(-1, &set, SFD_CLOEXEC | SFD_NONBLOCK);
  watch(around.line.handed_over(), Source::session);
  watch(beat_, Source::beat);
  watch(deadline_, Source::deadline);
  watch(inbox.descriptor(), Source::inbox);
  watch(around.store.descriptor(), Source::disk);
  watch(signals_, Source::signal);
  set_timer(beat_, mqtt::SafetyLine::beat_every, mqtt::SafetyLine::beat_every);
}

Loop::~Loop() {
  for (int descriptor : {signals_, deadline_, beat_, epoll_}) close(descriptor);
}

void Loop::watch(int descriptor, Source source) {
  epoll_event event{};
  event.events = EPOLLIN;
  event.data.u32 = static_cast<std::uint32_t>(source);
  epoll_ctl(epoll_, EPOLL_CTL_ADD, descriptor, &event);
}

void Loop::run() {
  decision_.start();
  around_.line.open();
  while (!stopping_) {
    set_timer(deadline_, around_.clock.until(decision_.due()), {});
    std::array<epoll_event, 8> events;
    const int count = epoll_wait(epoll_, events.data(), static_cast<int>(events.size()), -1);
    for (int i = 0; i < count; ++i) {
      ready(static_cast<Source>(events.at(static_cast<std::size_t>(i)).data.u32));
    }
  }
  stop();
}

void Loop::ready(Source source) {
  drain();  // what sensors have to say goes before everything else
  switch (source) {
    case Source::line:
      return;
    case Source::session:
      return adopt();
    case Source::beat:
      return beat();
    case Source::deadline:
      read_off(deadline_);
      return decision_.happen(Tick{});
    case Source::inbox:
      for (const Inbox::Request& request : inbox_.take()) {
        std::visit([this](const auto& what) { decision_.happen(what); }, request);
      }
      return;
    case Source::disk:
      return decision_.committed();
    case Source::signal:
      stopping_ = true;
  }
}

void Loop::drain() {
  const bool was_up = around_.line.up();
  mqtt::Inbound message;
  while (around_.line.receive(message)) decision_.hear(message);
  while (const auto delivery = around_.line.delivered()) decision_.happen(*delivery);
  if (was_up && !around_.line.up()) decision_.happen(Link{false});
}

void Loop::adopt() {
  switch (around_.line.adopt()) {
    case mqtt::SafetyLine::News::none:
      return;
    case mqtt::SafetyLine::News::standing_back:
      return around_.reporter.forbid();
    case mqtt::SafetyLine::News::up:
      watch(around_.line.socket(), Source::line);
      around_.reporter.allow(around_.line.version());
      decision_.happen(Link{true});
      drain();
  }
}

void Loop::beat() {
  read_off(beat_);
  const bool was_up = around_.line.up();
  around_.line.beat();
  if (was_up && !around_.line.up()) decision_.happen(Link{false});
  decision_.rest();
  log::tend();
}

void Loop::stop() {
  log::info("Stopping: everything goes OFF.");
  decision_.happen(Stopping{});
  const auto end = std::chrono::steady_clock::now() + std::chrono::milliseconds{400};
  while (around_.line.undelivered() > 0 && std::chrono::steady_clock::now() < end) {
    pollfd wait{around_.line.socket(), POLLIN, 0};
    poll(&wait, 1, 20);
    drain();
  }
  decision_.rest();
}

}  // namespace tidewright
