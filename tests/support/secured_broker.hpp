// A private mosquitto with two doors: a plain one for the test's own hand, and an encrypted one,
// with certificates of the test's own, for the daemon.
#pragma once

#include <memory>
#include <string>

#include "tests/support/broker.hpp"
#include "tests/support/certificates.hpp"

namespace tidewright::support {

// The encrypted door.
struct Door {
  Wish server{"server", "DNS:localhost,IP:127.0.0.1", false};
  bool self_signed = false;
  std::string user{};  // empty: everybody is let in
  std::string password{};
  std::string access{};   // mosquitto's access list; empty: everything is allowed
  std::string further{};  // settings
};

class SecuredBroker {
 public:
  explicit SecuredBroker(const Door& door = {});

  const Authority& authority() const { return authority_; }
  Broker& plain() { return *broker_; }
  std::string uri(const std::string& host = "127.0.0.1") const {
    return "mqtts://" + host + ":" + std::to_string(port_);
  }
  // Writes a file of that name and text; its path.
  std::string file(const std::string& name, const std::string& text) const;
  // A path to config/minimal.toml, where [broker] names this one, our authority and, in `lines`,
  // what else is wanted.
  std::string household(const std::string& lines = "") const;

 private:
  std::string settings(const Door& door) const;

  TemporaryDirectory directory_;
  Authority authority_;
  int port_;
  std::unique_ptr<Broker> broker_;
};

}  // namespace tidewright::support
