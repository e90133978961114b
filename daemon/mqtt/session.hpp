// One connection to the broker on the synchronous Paho library: made by a helper thread, then
// handed over to the decision thread, which drives it by its socket and never waits for it.
// At most one may exist in the process at a time: the library keeps its state in globals.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "daemon/mqtt/access.hpp"
#include "daemon/mqtt/tap.hpp"

namespace tidewright::mqtt {

// A message as the library holds it, given back when this object goes or is filled anew.
class Inbound {
 public:
  Inbound() = default;
  ~Inbound();
  Inbound(const Inbound&) = delete;
  Inbound& operator=(const Inbound&) = delete;

  std::string_view topic() const { return topic_; }
  std::string_view payload() const { return payload_; }
  bool retained() const { return retained_; }

 private:
  friend class Session;
  void release();
  char* name_ = nullptr;
  void* message_ = nullptr;
  std::string_view topic_;
  std::string_view payload_;
  bool retained_ = false;
};

// The broker's word on a QoS 1 message of ours (MQTT 5 only): 0 taken, 16 nobody listens,
// >= 128 refused.
struct Acknowledgement {
  int token = 0;
  std::uint8_t code = 0;
};

class Session {
 public:
  struct Opened {
    std::unique_ptr<Session> session;
    std::string trouble;           // in place of a session: why not, in a sentence for a person
    bool version_refused = false;  // the broker does not speak this version of MQTT
  };
  // Waits up to 2 s for a silent broker, longer for a slow name server. `version` is 5 or 4
  // (3.1.1).
  static Opened open(const Access& access, const std::string& client_id, int version);
  ~Session();  // says goodbye and closes
  Session(const Session&) = delete;
  Session& operator=(const Session&) = delete;

  // Waits for the answer: the QoS granted, >= 128 refused, < 0 the connection is lost.
  // `own_too`: what this session publishes there comes back to it (always so with 3.1.1).
  int subscribe(const std::string& topic, int qos, bool own_too);

  int version() const { return version_; }
  int socket() const { return tapped_.socket; }
  bool alive() const;

  // Takes the next message that has arrived; false if there is none now, or not alive().
  bool receive(Inbound& into);
  // Sends at once; the token of a QoS 1 message, or none if it could not be sent.
  // `expiry_seconds` tells an MQTT 5 broker when to throw it away; 0 = never.
  std::optional<int> publish(const std::string& topic, std::string_view payload, int qos,
                             std::uint32_t expiry_seconds);
  // Filled by receive(); the caller empties it.
  std::vector<Acknowledgement>& acknowledgements() { return acknowledgements_; }
  // So many QoS 1 messages may be unacknowledged; one more would block.
  int window() const { return window_; }

 private:
  explicit Session(int version) : version_(version) {}
  int connect(const Access& access, const std::string& client_id);

  void* handle_ = nullptr;
  Tapped tapped_;
  int version_;
  int window_ = 65'000;
  std::vector<Acknowledgement> acknowledgements_;
};

}  // namespace tidewright::mqtt
