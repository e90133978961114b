#include "tests/support/broker.hpp"

#include <unistd.h>

#include <csignal>
#include <stdexcept>

#include "tests/support/eventually.hpp"
#include "tests/support/socket.hpp"

namespace tidewright::support {

int free_port() {
  const Listener listener = listen_on_loopback();
  close(listener.fd);
  return listener.port;
}

bool listening(int port, Milliseconds bound) {
  return eventually(bound, [port] {
    const int fd = connect_to_loopback(port);
    if (fd >= 0) close(fd);
    return fd >= 0;
  });
}

Broker::Broker(const std::string& settings) : port_(free_port()) {
  write_file(directory_.path() + "/broker.conf",
             // Each door has rights of its own; and a broker that is root must not become a user
             // who may not read the test's files.
             "per_listener_settings true\nuser root\nlistener " + std::to_string(port_) +
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
