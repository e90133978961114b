#include "daemon/commands/exchange.hpp"

#include <fmt/format.h>
#include <mqtt/async_client.h>

#include <nlohmann/json.hpp>
#include <random>
#include <utility>

#include "daemon/hub/request_kinds.hpp"
#include "daemon/mqtt/session.hpp"

namespace tidewright::commands {
namespace {

using Clock = std::chrono::steady_clock;

::mqtt::ssl_options tls_options(const mqtt::Access& access) {
  ::mqtt::ssl_options tls;
  tls.set_verify(true);
  if (!access.ca_file.empty()) tls.set_trust_store(access.ca_file);
  if (!access.certificate_file.empty()) {
    tls.set_key_store(access.certificate_file);
    tls.set_private_key(access.key_file);
  }
  return tls;
}

::mqtt::connect_options options(const mqtt::Access& access) {
  ::mqtt::connect_options made;
  made.set_mqtt_version(MQTTVERSION_3_1_1);
  made.set_clean_session(true);
  made.set_connect_timeout(5);
  if (!access.username.empty()) made.set_user_name(access.username);
  if (!access.password.empty()) made.set_password(access.password);
  if (access.tls) made.set_ssl(tls_options(access));
  return made;
}

std::string id_of(const std::string& answer) {
  const auto json = nlohmann::json::parse(answer, nullptr, false);
  if (!json.is_object() || !json.contains("id") || !json["id"].is_string()) return {};
  return json["id"].get<std::string>();
}

}  // namespace

struct Exchange::Client {
  explicit Client(const std::string& uri)
      : wire(uri, fmt::format("tidewright-hand-{:08x}", std::random_device{}())) {}
  ::mqtt::async_client wire;
};

Exchange::Exchange(mqtt::Access access, hub::Place place, std::chrono::milliseconds patience)
    : access_(std::move(access)), place_(std::move(place)), patience_(patience) {}

Exchange::~Exchange() {
  if (!client_ || !client_->wire.is_connected()) return;
  try {
    client_->wire.disconnect()->wait_for(patience_);
  } catch (const ::mqtt::exception&) {
    // The broker is gone; so are we.
  }
}

std::string Exchange::open() {
  try {
    client_ = std::make_unique<Client>(access_.uri);
    ::mqtt::async_client& wire = client_->wire;
    wire.start_consuming();
    if (!wire.connect(options(access_))->wait_for(patience_)) return "it does not answer.";
    for (const std::string& topic : {place_.topic("answer"), place_.base + "/online"}) {
      if (!wire.subscribe(topic, 1)->wait_for(patience_)) return "it does not answer.";
    }
  } catch (const ::mqtt::exception& failure) {
    // The daemon's own way to the broker knows better words.
    const std::string id = fmt::format("tidewright-hand-{:08x}", std::random_device{}());
    const std::string trouble = mqtt::Session::open(access_, id, 4).trouble;
    return trouble.empty() ? failure.what() : trouble;
  }
  return {};
}

std::optional<std::string> Exchange::ask(hub::Verb verb, const std::string& request,
                                         const std::string& id) {
  try {
    ::mqtt::async_client& wire = client_->wire;
    wire.publish(place_.topic(hub::verb_name(verb)), request, 1, false);
    const auto give_up = Clock::now() + patience_;
    while (Clock::now() < give_up) {
      ::mqtt::const_message_ptr message;
      const bool came = wire.try_consume_message_until(&message, give_up);
      if (!came || !message) return std::nullopt;  // none in time, or the connection is lost
      if (message->get_topic() != place_.topic("answer")) {
        online_ = message->to_string();
      } else if (id_of(message->to_string()) == id) {
        return message->to_string();
      }
    }
  } catch (const ::mqtt::exception&) {
    // The broker went away; the caller says what that may mean.
  }
  return std::nullopt;
}

}  // namespace tidewright::commands
