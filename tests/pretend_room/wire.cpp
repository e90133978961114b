#include "tests/pretend_room/wire.hpp"

#include <fmt/core.h>

#include <cstdio>
#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/pretend_room/payload.hpp"

namespace tidewright::pretend {
namespace {

std::string own_topics(const config::Household& household) {
  return household.base + "/" + household.room.id + "/";
}

std::string text_of(const nlohmann::json& document, const char* key) {
  const auto found = document.find(key);
  if (found == document.end()) return "";
  return found->is_string() ? found->get<std::string>() : found->dump();
}

// Words in lines of at most 80 bytes, set in by four.
std::string set_in(const std::string& text) {
  constexpr std::size_t widest = 80;
  std::istringstream words(text);
  std::string lines;
  std::string line;
  for (std::string word; words >> word;) {
    if (!line.empty() && line.size() + 1 + word.size() > widest) {
      lines += "    " + line + '\n';
      line.clear();
    }
    line += (line.empty() ? "" : " ") + word;
  }
  return lines + "    " + line + '\n';
}

void print_announcement(const nlohmann::json& said) {
  fmt::print("\n    PHONE, {}: {}\n{}\n", text_of(said, "event"), text_of(said, "title"),
             set_in(text_of(said, "text")));
  std::fflush(stdout);
}

}  // namespace

Wire::Wire(const config::Household& household, int port)
    : household_(&household), client_(port, "pretend-room") {
  for (const config::Outlet& outlet : household.outlets) client_.subscribe(outlet.topic);
  client_.subscribe(own_topics(household) + "value/#");
  client_.subscribe(own_topics(household) + "announcement");
  client_.subscribe(own_topics(household) + "answer");
}

void Wire::publish(const Event& event) {
  if (const auto* reading = std::get_if<Reading>(&event.what)) {
    const config::Source& source = household_->sources[reading->instrument];
    client_.publish(source.topic, payload(source, household_->room.instruments[reading->instrument],
                                          reading->value));
  } else if (const auto* refusal = std::get_if<Refusal>(&event.what)) {
    client_.publish(household_->sources[refusal->instrument].topic, "not a reading");
  } else if (const auto* available = std::get_if<Availability>(&event.what)) {
    const auto& topic = household_->sources[available->instrument].availability;
    if (!topic) return;
    client_.publish(topic->topic, available->online ? topic->online : topic->offline, true);
  }
}

void Wire::hear(const support::Message& message) {
  const std::string own = own_topics(*household_);
  const std::string values = own + "value/";
  if (message.topic.starts_with(values)) {
    values_[message.topic.substr(values.size())] = message.payload;
    return;
  }
  const auto document = nlohmann::json::parse(message.payload, nullptr, false);
  if (!document.is_object()) return;
  if (message.topic == own + "announcement") print_announcement(document);
  if (message.topic == own + "answer" && document.contains("token")) {
    token_ = text_of(document, "token");
  }
}

void Wire::listen(rehearsal::PretendRoom& pretend, support::Milliseconds bound) {
  for (auto message = client_.next(bound); message;
       message = client_.next(support::Milliseconds{0})) {
    bool command_found = false;
    for (std::size_t i = 0; i < household_->outlets.size(); ++i) {
      const config::Outlet& outlet = household_->outlets[i];
      if (message->topic != outlet.topic || message->retained) continue;
      command_found = true;
      const auto on = command(outlet, message->payload);
      if (on) pretend.obey({static_cast<room::ActuatorIndex>(i), *on, Duration{0}});
    }
    if (!command_found) hear(*message);
  }
}

void Wire::request(const std::string& verb, const std::string& json) {
  token_.reset();
  client_.publish(own_topics(*household_) + verb, json);
}

std::optional<std::string> Wire::told(const std::string& name) const {
  const auto found = values_.find(name);
  if (found == values_.end()) return std::nullopt;
  return found->second;
}

std::optional<std::string> Wire::take_token() {
  auto token = token_;
  token_.reset();
  return token;
}

}  // namespace tidewright::pretend
