// The report line's connection: what touches Paho C++. Included by its own two .cpp files only.
// The library's threads call the handlers; everything they touch is behind `lock`. No handler
// waits, and none calls the library.
#pragma once

#include <mqtt/async_client.h>

#include <cstdint>
#include <functional>
#include <mutex>
#include <string>
#include <vector>

#include "daemon/mqtt/report_line.hpp"

namespace tidewright::mqtt {

// With more unacknowledged, the library sends no faster than twenty a second.
inline constexpr int window = 8;

struct ReportWire : ::mqtt::iaction_listener {
  ReportWire(const ReportSettings& settings, int mqtt_version, std::function<void()> wake_up);

  enum class Phase { away, connecting, fresh, connected };

  // Begins to connect; `phase` tells what came of it.
  void begin(const ReportSettings& settings);
  // Gives the connection up.
  void drop();
  // Goes with every message: tells the answers of this connection from those of an older one.
  void* this_connection() const { return reinterpret_cast<void*>(connection); }

  // The library's calls.
  void on_success(const ::mqtt::token& token) override;
  void on_failure(const ::mqtt::token& token) override;
  void lost();
  void arrived(const ::mqtt::const_message_ptr& message);

  const std::string base;
  const std::string online_topic;
  const std::string ask_topic;
  const std::string tell_topic;
  const std::function<void()> wake;
  const int version;

  std::mutex lock;  // of what follows
  Phase phase = Phase::away;
  std::uintptr_t connection = 0;  // counts; what is said of an older one is not listened to
  int unacknowledged = 0;
  ReportLine::Clock::time_point heard{};  // last sign of life, or begin of the phase
  ReportLine::Clock::time_point connected_at{};
  std::vector<hub::Letter> letters;
  std::string trouble;  // for the log

  ::mqtt::async_client client;  // last: it goes first, and its threads with it
};

}  // namespace tidewright::mqtt
