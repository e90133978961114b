// How the broker is reached, in the words of the Paho libraries. Both lines use it.
#pragma once

#include <string>
#include <variant>

#include "config/household.hpp"

namespace tidewright::mqtt {

struct Access {
  std::string uri;      // "tcp://host:1883" or "ssl://host:8883"
  std::string address;  // the same for people: "mqtts://host:8883"
  std::string host;     // for which the broker's certificate must be
  bool tls = false;
  std::string username;
  std::string password;
  std::string ca_file;
  std::string certificate_file;
  std::string key_file;
};

// Reads the password's file and looks at the certificates'. In place of an access: what is wrong,
// for a person.
std::variant<Access, std::string> access(const config::Broker& broker);

}  // namespace tidewright::mqtt
