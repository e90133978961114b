#include "tests/support/floor.hpp"

#include <sys/epoll.h>
#include <sys/prctl.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <csignal>

#include "tests/support/socket.hpp"

namespace tidewright::support {
namespace {

using Steady = std::chrono::steady_clock;
using Microseconds = std::chrono::duration<double, std::micro>;

[[noreturn]] void respond(int port, const std::string& in, const std::string& out) {
  prctl(PR_SET_PDEATHSIG, SIGKILL);
  const int fd = connect_to_loopback(port);
  const auto say = [fd](const Packet& packet) {
    const std::string bytes = encode(packet);
    if (send(fd, bytes.data(), bytes.size(), MSG_NOSIGNAL) < 0) _exit(1);
  };
  say(connect_packet("floor", 4));
  say(subscribe_packet(1, in, 1, 4));
  const int epoll = epoll_create1(0);
  epoll_event event{};
  event.events = EPOLLIN;
  epoll_ctl(epoll, EPOLL_CTL_ADD, fd, &event);
  std::string buffer;
  for (std::uint16_t id = 1;;) {
    epoll_wait(epoll, &event, 1, -1);
    std::array<char, 4096> bytes;
    const ssize_t n = recv(fd, bytes.data(), bytes.size(), 0);
    if (n <= 0) _exit(0);
    buffer.append(bytes.data(), static_cast<std::size_t>(n));
    while (const auto packet = take(buffer)) {
      if (packet->kind != Kind::publish) continue;
      Message off;
      off.topic = out;
      off.payload = "OFF";
      off.qos = 1;
      off.id = id = static_cast<std::uint16_t>(id % 60'000 + 1);
      say(publish_packet(off, 4));
      say(puback_packet(publish_of(*packet, 4).id));
    }
  }
}

}  // namespace

Floor::Floor(int port) : pid_(fork()) {
  if (pid_ == 0) respond(port, leak, set);
}

Floor::~Floor() {
  kill(pid_, SIGKILL);
  waitpid(pid_, nullptr, 0);
}

void react(MqttClient& home, Path& path) {
  while (home.next(Milliseconds{0})) {
  }
  const auto sent = Steady::now();
  Message wet;
  wet.topic = path.leak;
  wet.payload = "wet";
  wet.qos = 1;
  home.publish(wet);
  const auto off = home.await(path.set, "OFF", Milliseconds{1'000});
  if (off) {
    path.microseconds.push_back(Microseconds(off->arrived - sent).count());
  } else {
    ++path.lost;
  }
}

double quantile(const Path& path, double part) {
  std::vector<double> sorted = path.microseconds;
  std::sort(sorted.begin(), sorted.end());
  if (sorted.empty()) return 0;
  return sorted[static_cast<std::size_t>(part * static_cast<double>(sorted.size() - 1))];
}

}  // namespace tidewright::support
