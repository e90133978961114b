#include "tests/support/proxy.hpp"

#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include <array>
#include <string_view>

#include "tests/support/socket.hpp"

namespace tidewright::support {
namespace {

constexpr int look_every_ms = 20;

bool is_version_5(std::string_view connect) {
  // Fixed header (2 bytes at these lengths), then the name "MQTT" with its length, then the level.
  constexpr std::size_t level_at = 2 + 6;
  return connect.size() > level_at && connect[0] == 0x10 && connect[level_at] == 5;
}

}  // namespace

Proxy::Proxy(int broker_port) : broker_port_(broker_port) {
  const Listener listener = listen_on_loopback();
  listener_ = listener.fd;
  port_ = listener.port;
  serving_ = std::thread([this] { serve(); });
}

Proxy::~Proxy() {
  ending_ = true;
  serving_.join();
  for (std::thread& thread : passing_) thread.join();
  close(listener_);
}

void Proxy::cut_silently() { ++generation_; }

void Proxy::serve() {
  while (!ending_) {
    pollfd wait{listener_, POLLIN, 0};
    if (poll(&wait, 1, look_every_ms) <= 0) continue;
    const int client = accept4(listener_, nullptr, nullptr, SOCK_CLOEXEC);
    if (client < 0) continue;
    ++connections_;
    passing_.emplace_back([this, client] { pass(client); });
  }
}

void Proxy::pass(int client) {
  const int generation = generation_;
  const int broker = connect_to_loopback(broker_port_);
  no_delay(client);
  bool open = broker >= 0;
  while (open && !ending_) {
    std::array<pollfd, 2> wait{pollfd{client, POLLIN, 0}, pollfd{broker, POLLIN, 0}};
    if (poll(wait.data(), wait.size(), look_every_ms) <= 0 || generation != generation_) continue;
    for (std::size_t from = 0; from < 2 && open; ++from) {
      if (wait.at(from).revents == 0) continue;
      std::array<char, 65536> bytes;
      const ssize_t n = recv(wait.at(from).fd, bytes.data(), bytes.size(), 0);
      open = n > 0;
      if (!open) break;
      const std::string_view got(bytes.data(), static_cast<std::size_t>(n));
      if (from == 0 && refuse_version_5_ && is_version_5(got)) {
        const std::array<char, 4> connack{0x20, 2, 0, 1};
        send(client, connack.data(), connack.size(), MSG_NOSIGNAL);
        open = false;
      } else {
        open = send(wait.at(1 - from).fd, got.data(), got.size(), MSG_NOSIGNAL) == n;
      }
    }
  }
  close(client);
  if (broker >= 0) close(broker);
}

}  // namespace tidewright::support
