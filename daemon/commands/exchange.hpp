// A short conversation with the running daemon over the broker: requests out, their answers in.
// Speaks MQTT 3.1.1, which every broker understands; an answer is known by the request's `id`.
#pragma once

#include <chrono>
#include <memory>
#include <optional>
#include <string>

#include "daemon/hub/plain.hpp"
#include "daemon/hub/request.hpp"
#include "daemon/mqtt/access.hpp"
#include "daemon/mqtt/session.hpp"

namespace tidewright::commands {

class Exchange {
 public:
  Exchange(mqtt::Access access, hub::Place place, std::chrono::milliseconds patience);

  // Connects and listens for answers. What went wrong, for a person; empty if nothing did.
  std::string open();
  // The daemon's answer to `request`, which has that `id`; none if it did not come in time.
  // Requires that open() went well.
  std::optional<std::string> ask(hub::Verb verb, const std::string& request, const std::string& id);
  // What the daemon, or the broker for it, last said of it: `online`, `offline`, or empty.
  const std::string& online() const { return online_; }

 private:
  mqtt::Access access_;
  hub::Place place_;
  std::chrono::milliseconds patience_;
  std::string online_;
  std::unique_ptr<mqtt::Session> session_;
};

}  // namespace tidewright::commands
