#include "tests/support/mqtt_client.hpp"

#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include <array>
#include <stdexcept>

#include "tests/support/socket.hpp"

namespace tidewright::support {
namespace {
constexpr Milliseconds patience{5'000};
}

MqttClient::MqttClient(int port, const std::string& id, int version,
                       const std::optional<Will>& will)
    : fd_(connect_to_loopback(port)), version_(version) {
  if (fd_ < 0) throw std::runtime_error("no broker on port " + std::to_string(port));
  send(connect_packet(id, version, will));
  if (!read_until([this] { return connack_ == 0; }, patience)) {
    close(fd_);
    throw std::runtime_error("broker refused " + id);
  }
}

MqttClient::~MqttClient() {
  if (fd_ >= 0) close(fd_);
}

// MQTT 5 section 2.2.1: never 0.
std::uint16_t MqttClient::next_id() {
  if (++last_id_ == 0) ++last_id_;
  return last_id_;
}

void MqttClient::subscribe(const std::string& filter, int qos) {
  const std::uint16_t id = next_id();
  send(subscribe_packet(id, filter, qos, version_));
  if (!read_until([&] { return acknowledged_ == id; }, patience)) {
    throw std::runtime_error("no SUBACK for " + filter);
  }
}

void MqttClient::publish(Message message) {
  if (message.qos > 0) message.id = next_id();
  send(publish_packet(message, version_));
  if (message.qos > 0 && !read_until([&] { return acknowledged_ == message.id; }, patience)) {
    throw std::runtime_error("no PUBACK for " + message.topic);
  }
}

void MqttClient::publish(const std::string& topic, const std::string& payload, bool retained) {
  Message message;
  message.topic = topic;
  message.payload = payload;
  message.qos = 1;
  message.retained = retained;
  publish(message);
}

std::optional<Message> MqttClient::next(Milliseconds bound) {
  if (!read_until([this] { return taken_ < seen_.size(); }, bound)) return std::nullopt;
  return seen_[taken_++];
}

std::optional<Message> MqttClient::await(const std::function<bool(const Message&)>& matches,
                                         Milliseconds bound) {
  const auto end = std::chrono::steady_clock::now() + bound;
  while (true) {
    const auto left =
        std::chrono::duration_cast<Milliseconds>(end - std::chrono::steady_clock::now());
    std::optional<Message> message = next(std::max(left, Milliseconds{0}));
    if (!message || matches(*message)) return message;
  }
}

std::optional<Message> MqttClient::await(const std::string& topic, const std::string& payload,
                                         Milliseconds bound) {
  return await([&](const Message& m) { return m.topic == topic && m.payload == payload; }, bound);
}

std::optional<Message> MqttClient::await_topic(const std::string& topic, Milliseconds bound) {
  return await([&](const Message& m) { return m.topic == topic; }, bound);
}

void MqttClient::send(const Packet& packet) {
  const std::string bytes = encode(packet);
  for (std::size_t sent = 0; sent < bytes.size();) {
    const ssize_t n = ::send(fd_, bytes.data() + sent, bytes.size() - sent, MSG_NOSIGNAL);
    if (n <= 0) throw std::runtime_error("connection to the broker is gone");
    sent += static_cast<std::size_t>(n);
  }
}

bool MqttClient::read_until(const std::function<bool()>& done, Milliseconds bound) {
  const auto end = std::chrono::steady_clock::now() + bound;
  while (!done()) {
    const auto left =
        std::chrono::duration_cast<Milliseconds>(end - std::chrono::steady_clock::now());
    if (fd_ < 0 || left.count() < 0) return false;
    pollfd wait{fd_, POLLIN, 0};
    if (poll(&wait, 1, static_cast<int>(left.count()) + 1) <= 0) continue;
    std::array<char, 65536> bytes;
    const ssize_t n = recv(fd_, bytes.data(), bytes.size(), 0);
    if (n <= 0) {
      close(fd_);
      fd_ = -1;
      return done();
    }
    buffer_.append(bytes.data(), static_cast<std::size_t>(n));
    while (const std::optional<Packet> packet = take(buffer_)) handle(*packet);
  }
  return true;
}

void MqttClient::handle(const Packet& packet) {
  switch (packet.kind) {
    case Kind::connack:
      connack_ = static_cast<std::uint8_t>(packet.body.at(1));
      break;
    case Kind::puback:
    case Kind::suback:
      acknowledged_ = number16(packet.body);
      break;
    case Kind::publish:
      seen_.push_back(publish_of(packet, version_));
      seen_.back().arrived = std::chrono::steady_clock::now();
      if (seen_.back().qos > 0) send(puback_packet(seen_.back().id));
      break;
    default:
      break;
  }
}

}  // namespace tidewright::support
