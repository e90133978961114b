#include "daemon/mqtt/access.hpp"

#include <fmt/format.h>

#include "daemon/mqtt/trust.hpp"
#include "daemon/post/secret.hpp"

namespace tidewright::mqtt {
namespace {

constexpr std::string_view plain = "mqtt://";
constexpr std::string_view secured = "mqtts://";

bool has_port(std::string_view host) {
  const std::size_t colon = host.rfind(':');
  const std::size_t bracket = host.rfind(']');
  return colon != host.npos && (bracket == host.npos || colon > bracket);
}

// Also without the brackets around an IPv6 address.
std::string without_port(std::string_view host) {
  if (has_port(host)) host = host.substr(0, host.rfind(':'));
  if (host.starts_with('[') && host.ends_with(']')) host = host.substr(1, host.size() - 2);
  return std::string(host);
}

}  // namespace

std::variant<Access, std::string> access(const config::Broker& broker) {
  Access access;
  std::string_view host = broker.uri;
  access.tls = host.starts_with(secured);
  if (!access.tls && !host.starts_with(plain)) {
    return fmt::format(
        "The broker's address is \"{}\"; expected mqtt://host:port or mqtts://host:port.",
        broker.uri);
  }
  host.remove_prefix(access.tls ? secured.size() : plain.size());
  if (host.ends_with('/')) host.remove_suffix(1);
  const std::string_view port = has_port(host) ? "" : access.tls ? ":8883" : ":1883";
  access.uri = fmt::format("{}{}{}", access.tls ? "ssl://" : "tcp://", host, port);
  access.address = fmt::format("{}{}{}", access.tls ? secured : plain, host, port);
  access.host = without_port(host);
  access.username = broker.username;
  access.ca_file = broker.ca_file;
  access.certificate_file = broker.certificate_file;
  access.key_file = broker.key_file;
  if (!broker.password_file.empty()) {
    const auto password = post::secret_in(broker.password_file);
    if (!password) {
      return fmt::format("The broker's password cannot be read from {}.", broker.password_file);
    }
    access.password = *password;
  }
  std::string trouble = files_trouble(access);
  if (!trouble.empty()) return trouble;
  return access;
}

}  // namespace tidewright::mqtt
