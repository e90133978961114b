#include "tests/support/crowding_broker.hpp"

#include <openssl/ssl.h>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include <array>
#include <memory>
#include <stdexcept>
#include <utility>

#include "tests/support/socket.hpp"

namespace tidewright::support {
namespace {

constexpr int look_every_ms = 20;

SSL_CTX* context_of(const Certified& server) {
  SSL_CTX* context = SSL_CTX_new(TLS_server_method());
  if (SSL_CTX_use_certificate_file(context, server.certificate_file.c_str(), SSL_FILETYPE_PEM) !=
          1 ||
      SSL_CTX_use_PrivateKey_file(context, server.key_file.c_str(), SSL_FILETYPE_PEM) != 1) {
    throw std::runtime_error("no certificate for the broker");
  }
  return context;
}

bool readable(int socket) {
  pollfd wait{socket, POLLIN, 0};
  return poll(&wait, 1, look_every_ms) > 0;
}

}  // namespace

struct CrowdingBroker::Connection {
  struct Free {
    void operator()(SSL* session) const { SSL_free(session); }
  };
  std::unique_ptr<SSL, Free> tls;

  // One TLS record for all of them.
  void send(std::initializer_list<Packet> packets) {
    std::string bytes;
    for (const Packet& packet : packets) bytes += encode(packet);
    SSL_write(tls.get(), bytes.data(), static_cast<int>(bytes.size()));
  }
};

CrowdingBroker::CrowdingBroker(const Certified& server, std::string command, std::string leak,
                               std::size_t crowded_acknowledgements)
    : command_(std::move(command)),
      leak_(std::move(leak)),
      context_(context_of(server)),
      crowded_left_(crowded_acknowledgements) {
  const Listener listener = listen_on_loopback();
  listener_ = listener.fd;
  port_ = listener.port;
  serving_ = std::thread([this] { serve(); });
}

CrowdingBroker::~CrowdingBroker() {
  ending_ = true;
  serving_.join();
  for (std::thread& thread : speaking_) thread.join();
  close(listener_);
  SSL_CTX_free(context_);
}

std::vector<std::chrono::microseconds> CrowdingBroker::after_acknowledgement() const {
  const std::lock_guard guard(lock_);
  return after_acknowledgement_;
}

std::vector<std::chrono::microseconds> CrowdingBroker::after_ping() const {
  const std::lock_guard guard(lock_);
  return after_ping_;
}

void CrowdingBroker::serve() {
  while (!ending_) {
    if (!readable(listener_)) continue;
    const int socket = accept4(listener_, nullptr, nullptr, SOCK_CLOEXEC);
    if (socket >= 0) speaking_.emplace_back([this, socket] { speak(socket); });
  }
}

void CrowdingBroker::speak(int socket) {
  no_delay(socket);
  Connection connection{decltype(Connection::tls)(SSL_new(context_))};
  SSL_set_fd(connection.tls.get(), socket);
  bool open = SSL_accept(connection.tls.get()) == 1;
  std::string buffer;
  while (open && !ending_) {
    if (SSL_pending(connection.tls.get()) == 0 && !readable(socket)) continue;
    std::array<char, 4096> bytes;
    const int n = SSL_read(connection.tls.get(), bytes.data(), bytes.size());
    open = n > 0;
    if (open) buffer.append(bytes.data(), static_cast<std::size_t>(n));
    while (const auto packet = take(buffer)) answer(connection, *packet);
  }
  connection.tls.reset();
  close(socket);
}

void CrowdingBroker::answer(Connection& connection, const Packet& packet) {
  const std::string taken(1, '\0');  // also: no properties
  switch (packet.kind) {
    case Kind::connect:
      return connection.send({{Kind::connack, 0, taken + taken + taken}});
    case Kind::subscribe:
      return connection.send({{Kind::suback, 0, packet.body.substr(0, 2) + taken + taken}});
    case Kind::publish:
      return published(connection, packet);
    case Kind::pingreq: {
      const std::lock_guard guard(lock_);
      connection.send({{Kind::pingresp, 0, {}}, wet()});
      said_ = Clock::now();
      waits_ = &after_ping_;
      return;
    }
    default:
      return;
  }
}

void CrowdingBroker::published(Connection& connection, const Packet& packet) {
  const Message message = publish_of(packet, 5);
  if (message.qos == 0) return;
  const std::lock_guard guard(lock_);
  if (message.topic != command_) return connection.send({puback_packet(message.id)});
  if (waits_ != nullptr) {
    waits_->push_back(std::chrono::duration_cast<std::chrono::microseconds>(Clock::now() - said_));
  }
  waits_ = nullptr;
  if (crowded_left_ == 0) return connection.send({puback_packet(message.id)});
  --crowded_left_;
  connection.send({puback_packet(message.id), wet()});
  said_ = Clock::now();
  waits_ = &after_acknowledgement_;
}

Packet CrowdingBroker::wet() {
  Message message{.topic = leak_, .payload = "wet", .qos = 1};
  message.id = ++last_id_;
  return publish_packet(message, 5);
}

}  // namespace tidewright::support
