#include "daemon/mqtt/access.hpp"

#include <fmt/format.h>
#include <openssl/x509.h>

#include <fstream>

namespace tidewright::mqtt {
namespace {

constexpr std::string_view plain = "mqtt://";
constexpr std::string_view secured = "mqtts://";

bool has_port(std::string_view host) {
  const std::size_t colon = host.rfind(':');
  const std::size_t bracket = host.rfind(']');
  return colon != host.npos && (bracket == host.npos || colon > bracket);
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
  access.uri = fmt::format("{}{}", access.tls ? "ssl://" : "tcp://", host);
  if (!has_port(host)) access.uri += access.tls ? ":8883" : ":1883";
  access.username = broker.username;
  access.ca_file = broker.ca_file;
  access.certificate_file = broker.certificate_file;
  access.key_file = broker.key_file;
  if (!broker.password_file.empty()) {
    std::ifstream file(broker.password_file);
    if (!std::getline(file, access.password)) {
      return fmt::format("The broker's password cannot be read from {}.", broker.password_file);
    }
  }
  return access;
}

std::string tls_failure(long verify_result) {
  switch (verify_result) {
    case X509_V_OK:
      return {};
    case X509_V_ERR_CERT_HAS_EXPIRED:
      return "the broker's certificate has expired";
    case X509_V_ERR_CERT_NOT_YET_VALID:
      return "the broker's certificate is not valid yet: is this machine's clock right?";
    case X509_V_ERR_DEPTH_ZERO_SELF_SIGNED_CERT:
    case X509_V_ERR_SELF_SIGNED_CERT_IN_CHAIN:
    case X509_V_ERR_UNABLE_TO_GET_ISSUER_CERT_LOCALLY:
    case X509_V_ERR_UNABLE_TO_VERIFY_LEAF_SIGNATURE:
      return "the broker's certificate is not signed by anybody we trust: is ca_file right?";
    case X509_V_ERR_HOSTNAME_MISMATCH:
    case X509_V_ERR_IP_ADDRESS_MISMATCH:
      return "the broker's certificate is for another name than the one in its address";
    default:
      return fmt::format("the broker's certificate was refused ({})",
                         X509_verify_cert_error_string(verify_result));
  }
}

}  // namespace tidewright::mqtt
