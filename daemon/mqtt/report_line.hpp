// The line on which everything is published and people's requests come in: Paho C++'s async_client,
// tended by one thread of the daemon's (daemon/reporter). The library's own threads only put what
// they hear into a bounded box and call `wake`.
// A broker that has forgotten everything is told everything again on every connect.
#pragma once

#include <chrono>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "daemon/hub/desk.hpp"
#include "daemon/hub/message.hpp"
#include "daemon/hub/plain.hpp"
#include "daemon/mqtt/back_off.hpp"
#include "daemon/mqtt/hub_births.hpp"
#include "daemon/mqtt/report_wire.hpp"

namespace tidewright::mqtt {

class ReportLine {
 public:
  using Clock = std::chrono::steady_clock;

  // `wake` is called from the library's threads whenever tend() or letter() has something to do.
  ReportLine(ReportSettings settings, std::function<void()> wake);
  ~ReportLine();
  ReportLine(const ReportLine&) = delete;
  ReportLine& operator=(const ReportLine&) = delete;

  // The line may use the daemon's name at the broker, with that version of MQTT (4 or 5) …
  void allow(int mqtt_version);
  // … or another daemon has it.
  void forbid();

  // The whole of what is retained; what differs from before is published.
  void show(std::vector<hub::Message> all);
  // The broker has acknowledged all of what was shown.
  const std::vector<hub::Message>& shown() const { return shown_; }
  bool has_shown_all() const { return acknowledged_ && due_.empty(); }
  // Once, in order, not retained; kept while the broker is away, the oldest lost beyond 64.
  void send(hub::Message message, std::string correlation = {});

  // Connects, publishes, gives up what hangs. Never waits. Returns when to call it again even
  // if `wake` is not called.
  Clock::time_point tend();
  // The next request that came in.
  std::optional<hub::Letter> letter();

  // Says that we leave, and goodbye; waits up to `patience` for the broker.
  void close(std::chrono::milliseconds patience);

 private:
  struct Once {
    hub::Message message;
    std::string correlation;
  };
  void try_to_connect(Clock::time_point now, Clock::time_point connected_at);
  void greet();
  void answer_birth(Clock::time_point now, bool born);
  void publish_what_is_due();

  ReportSettings settings_;
  std::function<void()> wake_;
  std::unique_ptr<ReportWire> wire_;  // while allowed
  std::vector<hub::Message> shown_;   // what the broker ought to hold
  std::vector<hub::Message> due_;     // what it does not hold yet; one per topic
  std::vector<Once> once_;
  bool acknowledged_ = false;  // nothing was due or on its way when tend() looked
  bool begun_ = false;         // connected, and it has not been said yet that all is ready
  HubBirths births_;
  BackOff back_off_;
  Clock::time_point next_try_{};
  Clock::time_point last_try_{};
};

}  // namespace tidewright::mqtt
