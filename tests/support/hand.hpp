// A hand on the broker: plays the minimal household's sensors, reads what the daemon publishes, and
// asks and tells.
#pragma once

#include <map>
#include <string>

#include "tests/support/broker.hpp"
#include "tests/support/mqtt_client.hpp"

namespace tidewright::support {

struct Said {
  bool came = false;
  bool done = false;
  std::string why;
  std::uint32_t token = 0;
  Message message;
};

class Hand {
 public:
  explicit Hand(const Broker& broker, int mqtt_version = 5);

  MqttClient& client() { return client_; }
  // Waits until the daemon says `online`.
  bool daemon_is_online();

  // `fields`: `"ask":"reset","alarm":"leak"`; who and id are added.
  Said ask(const std::string& fields) { return request("ask", fields); }
  Said tell(const std::string& fields) { return request("tell", fields); }

  void says(const std::string& instrument_topic, const std::string& payload);
  // Says it again and again until the daemon publishes that plain value.
  bool says_until(const std::string& instrument_topic, const std::string& payload,
                  const std::string& value_topic, const std::string& value);
  // Waits for the plain value at `value/<name>`.
  bool shows(const std::string& name, const std::string& value);
  // The last of it that came, empty if none did.
  std::string shown(const std::string& name);
  // All plain values whose name begins so.
  std::map<std::string, std::string> shown_under(const std::string& name_begin) const;
  // What has come on the topic of commands so far.
  std::string commands();

 private:
  Said request(const std::string& verb, const std::string& fields);
  void read(Milliseconds bound);

  MqttClient client_;
  int last_id_ = 0;
  std::map<std::string, std::string> latest_;
  std::string commands_;
  std::map<std::string, Message> answers_;
};

}  // namespace tidewright::support
