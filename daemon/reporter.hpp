// Tells the household: a thread of its own that makes words of the state, keeps the report line,
// and answers people. Nothing here can delay a command.
#pragma once

#include <chrono>
#include <filesystem>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

#include "config/household.hpp"
#include "core/effect.hpp"
#include "core/state/state.hpp"
#include "daemon/alerts/alerts.hpp"
#include "daemon/base/bell.hpp"
#include "daemon/clock.hpp"
#include "daemon/hub/desk.hpp"
#include "daemon/inbox.hpp"
#include "daemon/mqtt/report_line.hpp"
#include "daemon/panel/panel.hpp"
#include "daemon/showing.hpp"

namespace tidewright {

class Reporter {
 public:
  static constexpr std::chrono::milliseconds describe_every{200};

  // `panel` and `alerts`, which outlive it, see each report and each state; there may be none.
  Reporter(const config::Household& household, const Clock& clock, const mqtt::Access& access,
           Inbox& inbox, const std::filesystem::path& state_directory, panel::Panel* panel,
           alerts::Alerts* alerts);
  ~Reporter();
  Reporter(const Reporter&) = delete;
  Reporter& operator=(const Reporter&) = delete;

  // By the decision thread; none of these waits. The latest state wins.
  void show(const State& state);
  void announce(const Announcement& announcement, const State& state);
  void answer(const Answer& answer);
  // The name at the broker is ours, spoken with that version of MQTT; or another daemon has it.
  void allow(int mqtt_version);
  void forbid();

  // Says `offline` within `patience` and ends the thread. Nothing may be called after it.
  void close(std::chrono::milliseconds patience);

 private:
  using Steady = std::chrono::steady_clock;
  struct Mail {
    std::optional<State> state;
    std::vector<Announcement> announcements;
    std::vector<Answer> answers;
    std::optional<int> mqtt_version;  // allowed; 0 = forbidden
    std::optional<std::chrono::milliseconds> closing_patience;
  };
  static constexpr std::size_t mail_max = 64;

  template <class Fill>
  void post(Fill fill);
  void wake();
  void work();
  Mail next_mail(Steady::time_point until);
  void permit(int mqtt_version);
  void take(const State& state);
  void read_letters();
  void read(const hub::Letter& letter);
  void give(const hub::Reply& reply);
  Steady::time_point tend();
  void send_answers(const std::vector<Answer>& answers);
  void send_announcements(const std::vector<Announcement>& announcements);
  void describe();

  const config::Household& household_;
  const Clock& clock_;
  Inbox& inbox_;
  panel::Panel* panel_;
  alerts::Alerts* alerts_;

  Bell bell_;        // rung for whatever is new
  std::mutex lock_;  // of the mail
  Mail mail_;

  // What follows belongs to the thread.
  hub::Place place_;
  hub::Desk desk_;
  Showing showing_;
  mqtt::ReportLine line_;
  std::unique_ptr<mqtt::ReportLine> homie_;  // where the household wants it
  State state_;
  bool undescribed_ = false;
  Steady::time_point described_{};
  std::thread thread_;
};

}  // namespace tidewright
