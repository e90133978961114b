#include "daemon/commands/exchange.hpp"

#include <fmt/format.h>
#include <poll.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <random>
#include <utility>

#include "daemon/hub/request_kinds.hpp"

namespace tidewright::commands {
namespace {

using Clock = std::chrono::steady_clock;

constexpr int mqtt_3_1_1 = 4;

std::string id_of(std::string_view answer) {
  const auto json = nlohmann::json::parse(answer, nullptr, false);
  if (!json.is_object() || !json.contains("id") || !json["id"].is_string()) return {};
  return json["id"].get<std::string>();
}

void wait_for(int socket, Clock::time_point until) {
  const auto left = std::chrono::ceil<std::chrono::milliseconds>(until - Clock::now());
  pollfd readable{socket, POLLIN, 0};
  poll(&readable, 1, static_cast<int>(std::max<std::int64_t>(left.count(), 0)));
}

}  // namespace

Exchange::Exchange(mqtt::Access access, hub::Place place, std::chrono::milliseconds patience)
    : access_(std::move(access)), place_(std::move(place)), patience_(patience) {}

std::string Exchange::open() {
  const std::string id = fmt::format("tidewright-hand-{:08x}", std::random_device{}());
  mqtt::Session::Opened opened = mqtt::Session::open(access_, id, mqtt_3_1_1);
  if (!opened.session) return opened.trouble;
  session_ = std::move(opened.session);
  for (const std::string& topic : {place_.topic("answer"), place_.base + "/online"}) {
    const int granted = session_->subscribe(topic, 1, false);
    if (granted < 0) return "it does not answer.";
    if (granted >= 128) return fmt::format("it does not let us read {}.", topic);
  }
  return {};
}

std::optional<std::string> Exchange::ask(hub::Verb verb, const std::string& request,
                                         const std::string& id) {
  if (!session_->publish(place_.topic(hub::verb_name(verb)), request, 1, 0)) return std::nullopt;
  const auto give_up = Clock::now() + patience_;
  while (session_->alive() && Clock::now() < give_up) {
    mqtt::Inbound message;
    while (session_->receive(message)) {
      if (message.topic() != place_.topic("answer")) {
        online_ = message.payload();
      } else if (id_of(message.payload()) == id) {
        return std::string(message.payload());
      }
    }
    wait_for(session_->socket(), give_up);
  }
  return std::nullopt;
}

}  // namespace tidewright::commands
