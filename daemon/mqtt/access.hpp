// How the broker is reached, in the words of the Paho libraries. Both lines use it.
#pragma once

#include <string>
#include <variant>

#include "config/household.hpp"

namespace tidewright::mqtt {

struct Access {
  std::string uri;  // "tcp://host:1883" or "ssl://host:8883"
  bool tls = false;
  std::string username;
  std::string password;
  std::string ca_file;
  std::string certificate_file;
  std::string key_file;
};

// Reads the password's file. In place of an access: what is wrong, for a person.
std::variant<Access, std::string> access(const config::Broker& broker);

// Why a TLS connection was refused, by OpenSSL's verify result; empty for 0 (verified).
std::string tls_failure(long verify_result);

}  // namespace tidewright::mqtt
