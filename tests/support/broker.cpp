#include "tests/support/broker.hpp"

#include <arpa/inet.h>
#include <netinet/in.h>
#include <sys/socket.h>
#include <unistd.h>

#include <csignal>
#include <stdexcept>

#include "tests/support/eventually.hpp"

namespace tidewright::support {
namespace {

sockaddr_in loopback(int port) {
  sockaddr_in address{};
  address.sin_family = AF_INET;
  address.sin_port = htons(static_cast<std::uint16_t>(port));
  address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  return address;
}

}  // namespace

int free_port() {
  const int fd = socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0);
  sockaddr_in address = loopback(0);
  socklen_t size = sizeof address;
  const bool bound = bind(fd, reinterpret_cast<sockaddr*>(&address), size) == 0 &&
                     getsockname(fd, reinterpret_cast<sockaddr*>(&address), &size) == 0;
  close(fd);
  if (!bound) throw std::runtime_error("no free port");
  return ntohs(address.sin_port);
}

bool listening(int port, Milliseconds bound) {
  return eventually(bound, [&] {
    const int fd = socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0);
    const sockaddr_in address = loopback(port);
    const int refused = connect(fd, reinterpret_cast<const sockaddr*>(&address), sizeof address);
    close(fd);
    return refused == 0;
  });
}

Broker::Broker(const std::string& settings) : port_(free_port()) {
  write_file(directory_.path() + "/broker.conf",
             "listener " + std::to_string(port_) +
                 " 127.0.0.1\nallow_anonymous true\npersistence false\nlog_type all\n" + settings +
                 "\n");
  start();
}

void Broker::start() {
  process_ = std::make_unique<Process>(
      std::vector<std::string>{"/usr/sbin/mosquitto", "-c", directory_.path() + "/broker.conf"},
      directory_.path() + "/log");
  if (!listening(port_, Milliseconds{5'000})) {
    throw std::runtime_error("mosquitto did not start: " + log());
  }
}

void Broker::stop() {
  process_->signal(SIGTERM);
  process_->wait(Milliseconds{5'000});
}

void Broker::kill() {
  process_->signal(SIGKILL);
  process_->wait(Milliseconds{5'000});
}

void Broker::pause() { process_->signal(SIGSTOP); }
void Broker::resume() { process_->signal(SIGCONT); }

}  // namespace tidewright::support
