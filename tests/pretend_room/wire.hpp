// The pretend room on a real broker: its instruments publish, its plugs listen, its people ask.
// Loopback only: a pretend sensor has no business on a real network.
#pragma once

#include <map>
#include <optional>
#include <string>

#include "config/household.hpp"
#include "core/rehearsal/pretend_room.hpp"
#include "tests/support/mqtt_client.hpp"

namespace tidewright::pretend {

class Wire {
 public:
  Wire(const config::Household&, int port);

  // What the room's instruments say, each to its topic.
  void publish(const Event&);
  // Waits up to `bound` for messages and lets the plugs obey the commands among them.
  void listen(rehearsal::PretendRoom&, support::Milliseconds bound);

  // A person's request: `ask` or `tell`, and its JSON.
  void request(const std::string& verb, const std::string& json);
  // The latest plain value that the daemon has published for `name`: "alarm/leak/state".
  std::optional<std::string> told(const std::string& name) const;
  // The token of the latest answer that held one; forgets it.
  std::optional<std::string> take_token();

 private:
  void hear(const support::Message&);

  const config::Household* household_;
  support::MqttClient client_;
  std::map<std::string, std::string> values_;  // by name, as the daemon published them
  std::optional<std::string> token_;
};

}  // namespace tidewright::pretend
