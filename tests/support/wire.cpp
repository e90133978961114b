#include "tests/support/wire.hpp"

#include <stdexcept>

namespace tidewright::support {
namespace {

// Property identifiers, MQTT 5 section 2.2.2.2.
constexpr char payload_format = 0x01, message_expiry = 0x02, content_type = 0x03,
               response_topic = 0x08, correlation_data = 0x09, subscription_id = 0x0b,
               topic_alias = 0x23, user_property = 0x26;

std::string bytes16(std::size_t n) {
  return {static_cast<char>(n >> 8 & 0xff), static_cast<char>(n & 0xff)};
}

std::string variable_length(std::size_t n) {
  std::string bytes;
  do {
    bytes += static_cast<char>((n & 0x7f) | (n > 0x7f ? 0x80 : 0));
    n >>= 7;
  } while (n > 0);
  return bytes;
}

// Reads fields off the front of what is left.
class Reader {
 public:
  explicit Reader(std::string_view bytes) : left_(bytes) {}
  std::string_view take(std::size_t n) {
    if (n > left_.size()) throw std::runtime_error("MQTT packet cut short");
    const std::string_view taken = left_.substr(0, n);
    left_.remove_prefix(n);
    return taken;
  }
  std::uint8_t byte() { return static_cast<std::uint8_t>(take(1)[0]); }
  std::uint16_t number() { return number16(take(2)); }
  std::string text() { return std::string(take(number())); }
  std::size_t length() {
    std::size_t n = 0;
    for (int shift = 0;; shift += 7) {
      const std::uint8_t b = byte();
      n |= static_cast<std::size_t>(b & 0x7f) << shift;
      if (b < 0x80) return n;
    }
  }
  std::string_view rest() const { return left_; }

 private:
  std::string_view left_;
};

void read_properties(Reader& reader, Message& message) {
  Reader properties(reader.take(reader.length()));
  while (!properties.rest().empty()) {
    switch (static_cast<char>(properties.byte())) {
      case payload_format:
        properties.byte();
        break;
      case message_expiry:
        message.expiry_seconds = std::uint32_t{properties.number()} << 16;
        *message.expiry_seconds |= properties.number();
        break;
      case response_topic:
        message.response_topic = properties.text();
        break;
      case correlation_data:
        message.correlation = properties.text();
        break;
      case subscription_id:
        properties.length();
        break;
      case topic_alias:
        properties.number();
        break;
      case user_property:
        properties.text();
        [[fallthrough]];
      case content_type:
        properties.text();
        break;
      default:
        throw std::runtime_error("MQTT property that no PUBLISH may carry");
    }
  }
}

}  // namespace

std::uint16_t number16(std::string_view bytes) {
  return static_cast<std::uint16_t>(static_cast<std::uint8_t>(bytes.at(0)) << 8 |
                                    static_cast<std::uint8_t>(bytes.at(1)));
}

std::string text_field(std::string_view text) { return bytes16(text.size()).append(text); }

std::string encode(const Packet& packet) {
  std::string bytes(1, static_cast<char>(static_cast<int>(packet.kind) << 4 | packet.flags));
  return bytes + variable_length(packet.body.size()) + packet.body;
}

std::optional<Packet> take(std::string& buffer) {
  std::size_t length = 0;
  std::size_t at = 1;
  for (int shift = 0;; shift += 7) {
    if (at >= buffer.size()) return std::nullopt;
    const auto b = static_cast<std::uint8_t>(buffer[at++]);
    length |= static_cast<std::size_t>(b & 0x7f) << shift;
    if (b < 0x80) break;
  }
  if (buffer.size() < at + length) return std::nullopt;
  const auto first = static_cast<std::uint8_t>(buffer[0]);
  Packet packet{static_cast<Kind>(first >> 4), static_cast<std::uint8_t>(first & 0x0f),
                buffer.substr(at, length)};
  buffer.erase(0, at + length);
  return packet;
}

Packet connect_packet(const std::string& client_id, int version, const std::optional<Will>& will) {
  const int clean_start = 0x02, with_will = 0x04;
  std::string body = text_field("MQTT");
  body += static_cast<char>(version);
  body += static_cast<char>(clean_start | (will ? with_will : 0));
  body += bytes16(0);
  if (version == 5) body += '\0';
  body += text_field(client_id);
  if (will) {
    if (version == 5) body += '\0';
    body += text_field(will->topic) + text_field(will->payload);
  }
  return {Kind::connect, 0, body};
}

Packet subscribe_packet(std::uint16_t id, const std::string& filter, int qos, int version) {
  std::string body = bytes16(id);
  if (version == 5) body += '\0';
  body += text_field(filter);
  body += static_cast<char>(qos);
  return {Kind::subscribe, 2, body};
}

Packet publish_packet(const Message& message, int version) {
  std::string body = text_field(message.topic);
  if (message.qos > 0) body += bytes16(message.id);
  if (version == 5) {
    std::string properties;
    if (message.expiry_seconds) {
      properties += message_expiry + bytes16(*message.expiry_seconds >> 16) +
                    bytes16(*message.expiry_seconds & 0xffff);
    }
    if (!message.response_topic.empty()) {
      properties += response_topic + text_field(message.response_topic);
    }
    if (!message.correlation.empty()) {
      properties += correlation_data + text_field(message.correlation);
    }
    body += variable_length(properties.size()) + properties;
  }
  const int flags = message.qos << 1 | (message.retained ? 1 : 0);
  return {Kind::publish, static_cast<std::uint8_t>(flags), body + message.payload};
}

Packet puback_packet(std::uint16_t id) { return {Kind::puback, 0, bytes16(id)}; }

Message publish_of(const Packet& packet, int version) {
  Message message;
  Reader reader(packet.body);
  message.qos = packet.flags >> 1 & 3;
  message.retained = (packet.flags & 1) != 0;
  message.topic = reader.text();
  if (message.qos > 0) message.id = reader.number();
  if (version == 5) read_properties(reader, message);
  message.payload = std::string(reader.rest());
  return message;
}

}  // namespace tidewright::support
