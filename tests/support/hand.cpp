#include "tests/support/hand.hpp"

#include <nlohmann/json.hpp>

#include "tests/support/eventually.hpp"

namespace tidewright::support {
namespace {

// About ten times the slowest that was measured: a connect, and the wait of a report.
constexpr Milliseconds patience{15'000};
constexpr Milliseconds moment{20};
const std::string room = "tidewright/waterroom/";
const std::string command_topic = "home/waterroom/booster/set";

}  // namespace

Hand::Hand(const Broker& broker, int mqtt_version)
    : client_(broker.port(), "hand" + std::to_string(mqtt_version), mqtt_version) {
  client_.subscribe("tidewright/#");
  client_.subscribe(command_topic);
}

void Hand::read(Milliseconds bound) {
  while (const auto message = client_.next(bound)) {
    latest_[message->topic] = message->payload;
    if (message->topic == command_topic) commands_ += message->payload + " ";
    if (message->topic == room + "answer") {
      const auto answer = nlohmann::json::parse(message->payload, nullptr, false);
      if (answer.is_object()) answers_[answer.value("id", "")] = *message;
    }
    bound = Milliseconds{0};
  }
}

bool Hand::daemon_is_online() {
  return eventually(patience, [&] {
    read(moment);
    return latest_["tidewright/online"] == "online";
  });
}

void Hand::says(const std::string& instrument_topic, const std::string& payload) {
  client_.publish(
      Message{.topic = "home/waterroom/" + instrument_topic, .payload = payload, .qos = 1});
}

bool Hand::says_until(const std::string& instrument_topic, const std::string& payload,
                      const std::string& value_topic, const std::string& value) {
  return eventually(patience, [&] {
    says(instrument_topic, payload);
    read(Milliseconds{300});
    return shown(value_topic) == value;
  });
}

bool Hand::shows(const std::string& name, const std::string& value) {
  return eventually(patience, [&] {
    read(moment);
    return shown(name) == value;
  });
}

std::string Hand::shown(const std::string& name) { return latest_[room + "value/" + name]; }

std::map<std::string, std::string> Hand::shown_under(const std::string& name_begin) const {
  std::map<std::string, std::string> found;
  const std::string begin = room + "value/" + name_begin;
  for (const auto& [topic, value] : latest_) {
    if (topic.starts_with(begin)) found[topic] = value;
  }
  return found;
}

std::string Hand::commands() {
  read(moment);
  return commands_;
}

Said Hand::request(const std::string& verb, const std::string& fields) {
  const std::string id = std::to_string(++last_id_);
  client_.publish(Message{.topic = room + verb,
                          .payload = "{" + fields + R"(,"who":"ann","id":")" + id + "\"}",
                          .qos = 1});
  Said said;
  said.came = eventually(patience, [&] {
    read(moment);
    return answers_.count(id) != 0;
  });
  if (!said.came) return said;
  said.message = answers_[id];
  const auto answer = nlohmann::json::parse(said.message.payload);
  said.done = answer.at("done").get<bool>();
  said.why = answer.at("why").get<std::string>();
  said.token = answer.value("token", 0U);
  return said;
}

}  // namespace tidewright::support
