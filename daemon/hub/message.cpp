#include "daemon/hub/message.hpp"

#include <string_view>
#include <unordered_map>
#include <unordered_set>

namespace tidewright::hub {
namespace {

std::string_view content(const Message& message) {
  return std::string_view(message.payload).substr(message.content_from);
}

}  // namespace

std::vector<Message> changes(const std::vector<Message>& before,
                             const std::vector<Message>& after) {
  std::unordered_map<std::string_view, const Message*> held;
  for (const Message& message : before) held[message.topic] = &message;

  std::vector<Message> due;
  std::unordered_set<std::string_view> kept;
  for (const Message& message : after) {
    kept.insert(message.topic);
    const auto found = held.find(message.topic);
    if (found == held.end() || content(*found->second) != content(message)) due.push_back(message);
  }
  for (const Message& message : before) {
    if (!message.retained || message.payload.empty()) continue;
    if (kept.insert(message.topic).second) due.push_back({message.topic, ""});
  }
  return due;
}

}  // namespace tidewright::hub
