#include "daemon/reporter.hpp"

#include <fmt/format.h>

#include <random>
#include <utility>

#include "core/report/report.hpp"
#include "daemon/hub/discovery.hpp"
#include "daemon/hub/plain.hpp"
#include "daemon/log/log.hpp"
#include "daemon/transitions.hpp"

namespace tidewright {
namespace {

std::uint32_t fresh_token() {
  static std::random_device chance;
  return std::uniform_int_distribution<std::uint32_t>(100'000, 999'999)(chance);
}

// Empty: no hub is told anything.
std::string birth_topic(const config::Household& household) {
  return household.hub.discovery ? hub::birth_topic(household) : std::string{};
}

}  // namespace

Reporter::Reporter(const config::Household& household, const Clock& clock,
                   const mqtt::Access& access, Inbox& inbox,
                   const std::filesystem::path& state_directory, panel::Panel* panel,
                   alerts::Alerts* alerts)
    : household_(household),
      clock_(clock),
      inbox_(inbox),
      panel_(panel),
      alerts_(alerts),
      place_{household.base, household.room.id},
      desk_(household, fresh_token),
      showing_(household, state_directory),
      line_(mqtt::plain_settings(access, place_, birth_topic(household)), [this] { wake(); }),
      homie_(household.hub.homie
                 ? std::make_unique<mqtt::ReportLine>(
                       mqtt::homie_settings(access, place_, hub::homie_device(showing_.manifest())),
                       [this] { wake(); })
                 : nullptr),
      thread_([this] { work(); }) {
  if (panel_ != nullptr) panel_->counter().open([this] { wake(); });
}

Reporter::~Reporter() { close(std::chrono::milliseconds{0}); }

template <class Fill>
void Reporter::post(Fill fill) {
  {
    const std::lock_guard guard(lock_);
    fill(mail_);
  }
  wake();
}

void Reporter::wake() { bell_.ring(); }

void Reporter::show(const State& state) {
  post([&](Mail& mail) { mail.state = state; });
}

void Reporter::announce(const Announcement& announcement, const State& state) {
  post([&](Mail& mail) {
    mail.state = state;
    if (mail.announcements.size() < mail_max) mail.announcements.push_back(announcement);
  });
}

void Reporter::answer(const Answer& answer) {
  post([&](Mail& mail) {
    if (mail.answers.size() < mail_max) mail.answers.push_back(answer);
  });
}

void Reporter::allow(int mqtt_version) {
  post([&](Mail& mail) { mail.mqtt_version = mqtt_version; });
}

void Reporter::forbid() { allow(0); }

void Reporter::close(std::chrono::milliseconds patience) {
  if (!thread_.joinable()) return;
  if (panel_ != nullptr) panel_->counter().close();
  post([&](Mail& mail) { mail.closing_patience = patience; });
  thread_.join();
}

Reporter::Mail Reporter::next_mail(Steady::time_point until) {
  bell_.wait_until(until);
  const std::lock_guard guard(lock_);
  return std::exchange(mail_, {});
}

void Reporter::work() {
  auto until = Steady::now();
  while (true) {
    const Mail mail = next_mail(until);
    if (mail.mqtt_version) permit(*mail.mqtt_version);
    if (mail.state) take(*mail.state);
    read_letters();
    send_answers(mail.answers);
    send_announcements(mail.announcements);
    const auto now = Steady::now();
    if (undescribed_ && (now >= described_ + describe_every || mail.closing_patience)) describe();
    until = tend();
    if (undescribed_) until = std::min(until, described_ + describe_every);
    if (mail.closing_patience) {
      if (homie_) homie_->close(*mail.closing_patience);
      return line_.close(*mail.closing_patience);
    }
  }
}

Reporter::Steady::time_point Reporter::tend() {
  auto until = line_.tend();
  if (homie_) until = std::min(until, homie_->tend());
  if (alerts_ != nullptr) {
    until = std::min(until, alerts_->tend());
    undescribed_ = undescribed_ || alerts_->has_news();
  }
  const bool all_shown = line_.has_shown_all() && (!homie_ || homie_->has_shown_all());
  static const std::vector<hub::Message> nothing;
  if (all_shown && showing_.arrived(line_.shown(), homie_ ? homie_->shown() : nothing)) {
    undescribed_ = true;
  }
  return until;
}

void Reporter::permit(int mqtt_version) {
  for (mqtt::ReportLine* line : {&line_, homie_.get()}) {
    if (line == nullptr) continue;
    if (mqtt_version == 0) {
      line->forbid();
    } else {
      line->allow(mqtt_version);
    }
  }
}

void Reporter::take(const State& state) {
  for (const std::string& line : transitions(household_.room, state_, state)) log::info(line);
  state_ = state;
  if (alerts_ != nullptr) alerts_->take(state);
  undescribed_ = true;
}

void Reporter::read_letters() {
  while (const std::optional<hub::Letter> letter = line_.letter()) read(*letter);
  if (panel_ != nullptr) {
    while (const std::optional<hub::Letter> letter = panel_->counter().next()) read(*letter);
  }
  if (!homie_) return;
  while (const std::optional<hub::Letter> letter = homie_->letter()) {
    const auto set = showing_.set(state_, *letter);
    if (!set) {
      log::warning(fmt::format("{}: that cannot be set to what came.", letter->topic));
      continue;
    }
    read(set->letter);
    homie_->send(set->reflected);
  }
}

void Reporter::read(const hub::Letter& letter) {
  const auto taken = desk_.take(letter, clock_.now(), clock_.wall());
  if (const auto* reply = std::get_if<hub::Reply>(&taken)) {
    give(*reply);
  } else if (const auto* ask = std::get_if<Ask>(&taken)) {
    inbox_.post(*ask);
  } else {
    inbox_.post(std::get<Tell>(taken));
  }
}

void Reporter::send_answers(const std::vector<Answer>& answers) {
  for (const Answer& answer : answers) {
    const std::string words = report::words(household_.room, answer.why);
    if (const auto reply = desk_.reply(answer, words, clock_.now(), clock_.wall())) {
      give(*reply);
    }
  }
}

void Reporter::give(const hub::Reply& reply) {
  if (reply.question == 0) return line_.send(reply.message, reply.correlation);
  if (panel_ != nullptr) panel_->counter().answer(reply.question, reply.outcome);
}

void Reporter::send_announcements(const std::vector<Announcement>& announcements) {
  for (const Announcement& announcement : announcements) {
    const report::Message message = report::message(household_.room, state_, announcement);
    log::warning(fmt::format("{} ({}): {}", message.title, message.event, message.text));
    const WallClock& wall = state_.circumstances.wall;
    line_.send(hub::plain(message, place_, wall));
    if (homie_) homie_->send(hub::homie(message, wall, household_, showing_.manifest()));
  }
}

void Reporter::describe() {
  described_ = Steady::now();
  undescribed_ = false;
  report::Report report = report::describe(household_.room, state_);
  if (alerts_ != nullptr) {
    for (report::Thing& way : alerts_->ways()) report.things.push_back(std::move(way));
  }
  Showing::Everything all = showing_.everything(state_, report);
  line_.show(std::move(all.plain));
  if (homie_) homie_->show(std::move(all.homie));
  if (panel_ != nullptr) panel_->show(state_, report);
}

}  // namespace tidewright
