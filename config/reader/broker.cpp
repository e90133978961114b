#include <fmt/format.h>

#include "config/reader/draft.hpp"

namespace tidewright::config {
namespace {

// The scheme, then host and perhaps port, and no name or password in between.
bool is_broker_uri(std::string_view uri) {
  for (const std::string_view scheme : {"mqtt://", "mqtts://"}) {
    if (!uri.starts_with(scheme)) continue;
    const std::string_view host = uri.substr(scheme.size());
    return !host.empty() && host.find_first_of("@/ ?#") == host.npos;
  }
  return false;
}

}  // namespace

void read_broker(Draft& draft) {
  if (!draft.broker) return;
  const Section& from = *draft.broker;
  Broker& broker = draft.household.broker;
  broker.uri = from.text("uri");
  broker.username = from.text("username");
  broker.password_file = from.text("password_file");
  broker.ca_file = from.text("ca_file");
  broker.certificate_file = from.text("certificate_file");
  broker.key_file = from.text("key_file");

  if (from.told("uri") != nullptr && !is_broker_uri(broker.uri)) {
    draft.problems.add(from.at("uri"),
                       fmt::format("`uri` is \"{}\"; expected mqtt:// or mqtts://, a host and "
                                   "perhaps a port, such as \"mqtt://127.0.0.1:1883\"",
                                   broker.uri),
                       "Name and password are keys of their own: username, password_file.");
  }
  needs(draft, from, "password_file", "username", "The broker asks for both.");
  needs(draft, from, "certificate_file", "key_file", "The certificate is proved by its key.");
  needs(draft, from, "key_file", "certificate_file", "The key proves a certificate.");
  if (from.mentions("ca_file") && broker.uri.starts_with("mqtt://")) {
    draft.problems.add(from.at("ca_file"),
                       "`ca_file` is given, but the line of `uri` is not encrypted; expected "
                       "mqtts:// in `uri`",
                       "Write mqtts:// in uri, or take ca_file out.");
  }
}

}  // namespace tidewright::config
