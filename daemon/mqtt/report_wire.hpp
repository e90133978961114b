// One connection after another of the report line: everything that touches Paho C++ is in its .cpp.
// The library's threads only put what they hear under a lock and call `wake`; none of them waits,
// and none calls the library.
#pragma once

#include <chrono>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "daemon/hub/desk.hpp"
#include "daemon/hub/message.hpp"
#include "daemon/mqtt/report_settings.hpp"

namespace tidewright::mqtt {

class ReportWire {
 public:
  using Clock = std::chrono::steady_clock;

  // `version` of MQTT: 4 (3.1.1) or 5.
  ReportWire(const ReportSettings& settings, int version, std::function<void()> wake);
  ~ReportWire();  // closes without a goodbye: the will is published
  ReportWire(const ReportWire&) = delete;
  ReportWire& operator=(const ReportWire&) = delete;

  // None of these waits.
  void begin();  // to connect
  void drop();   // the connection
  // False if 8 messages are unacknowledged (with more the library sends but twenty a second), or
  // the connection is lost.
  bool publish(const hub::Message& message, const std::string& correlation);
  void subscribe_to_requests();

  enum class Phase : std::uint8_t { away, connecting, fresh, connected };
  struct Seen {
    Phase phase{};          // `fresh` is seen once after each connect
    bool waiting = false;   // for an answer of the broker
    bool hub_born = false;  // a hub has just started, once
    Clock::time_point heard{};
    Clock::time_point connected_at{};  // of the last connect; 0 = never
    std::vector<std::string> trouble;  // for the log, once
  };
  Seen look();
  std::optional<hub::Letter> letter();

  // Publishes that we leave, and leaves; waits up to `longest` for each.
  void say_goodbye(std::chrono::milliseconds longest);

  int version() const { return version_; }

 private:
  struct Library;
  const ReportSettings settings_;
  const int version_;
  std::unique_ptr<Library> library_;
};

}  // namespace tidewright::mqtt
