#include "daemon/showing.hpp"

#include <fmt/format.h>

#include <random>
#include <string_view>
#include <unordered_set>
#include <utility>

#include "core/report/report.hpp"
#include "daemon/hub/discovery.hpp"
#include "daemon/hub/offer.hpp"
#include "daemon/hub/parts.hpp"
#include "daemon/log/log.hpp"

namespace tidewright {
namespace {

// A disk that refuses is asked again after so long.
constexpr std::chrono::seconds patience{60};

std::string new_instance() {
  std::random_device chance;
  return fmt::format("{:08x}{:04x}", chance(), chance() & 0xffffU);
}

}  // namespace

Showing::Showing(const config::Household& household, const std::filesystem::path& state_directory)
    : household_(household), place_{household.base, household.room.id}, file_(state_directory) {
  if (!file_.remark().empty()) log::warning(file_.remark());
  if (const auto& text = file_.text()) known_ = hub::manifest_of(*text).value_or(hub::Manifest{});
  auto parts = hub::adopt(household, known_.parts);
  named_ = kept_ = !known_.instance.empty() && parts == known_.parts;
  if (known_.instance.empty()) known_.instance = new_instance();
  known_.parts = std::move(parts);
}

std::vector<hub::Message> Showing::everything(const State& state) {
  const report::Report report = report::describe(household_.room, state);
  std::vector<hub::Message> messages;
  // Before the values: a button may be pressed as soon as they say so, and must know its token.
  if (household_.hub.discovery) messages.push_back(found_by_hub(report, state));
  for (hub::Message& each : hub::plain(report, place_)) messages.push_back(std::move(each));
  promise(messages);
  // Under an id that is not written down nothing is to be found: it could not stay the same.
  if (household_.hub.discovery && !named_) {
    known_.topics.erase(messages.front().topic);
    messages.erase(messages.begin());
  }
  take_back(messages);
  return messages;
}

hub::Message Showing::found_by_hub(const report::Report& report, const State& state) {
  const auto offers = hub::offers({household_, report, known_.parts, state.armed.token});
  components_ = hub::components_of(offers);
  return hub::discovery(offers, household_, known_);
}

// What is about to be told is written down before.
void Showing::promise(const std::vector<hub::Message>& messages) {
  kept_ = !known_.topics.insert(place_.base + "/online").second && kept_;
  for (const hub::Message& message : messages) {
    kept_ = !known_.topics.insert(message.topic).second && kept_;
  }
  for (const auto& component : components_) {
    kept_ = !known_.components.insert(component).second && kept_;
  }
  if (kept_ || (tried_ != Steady::time_point{} && Steady::now() < tried_ + patience)) return;
  keep(known_);
}

bool Showing::keep(hub::Manifest next) {
  if (!file_.write(hub::to_text(next))) {
    if (tried_ == Steady::time_point{}) {
      log::error("The disk does not take what hubs are told; what is new they are told later.");
    }
    tried_ = Steady::now();
    return false;
  }
  tried_ = {};
  known_ = std::move(next);
  named_ = kept_ = true;
  return true;
}

// First what another convention or another prefix left, then, after the news, what is ours.
void Showing::take_back(std::vector<hub::Message>& messages) const {
  std::unordered_set<std::string_view> shown;
  for (const hub::Message& message : messages) shown.insert(message.topic);
  std::vector<hub::Message> first, last;
  for (const std::string& topic : known_.topics) {
    if (shown.contains(topic) || topic == place_.base + "/online") continue;
    (topic.starts_with(place_.base + "/") ? last : first).push_back({topic, ""});
  }
  messages.insert(messages.begin(), first.begin(), first.end());
  messages.insert(messages.end(), last.begin(), last.end());
}

// Once in a run: fields that come and go later are not worth a write each time.
bool Showing::arrived(const std::vector<hub::Message>& shown) {
  if (tidied_ || !kept_ || shown.empty()) return false;
  tidied_ = true;
  hub::Manifest next{known_.instance, known_.parts, components_, {place_.base + "/online"}};
  for (const hub::Message& message : shown) {
    if (!message.payload.empty()) next.topics.insert(message.topic);
  }
  return next != known_ && keep(std::move(next));
}

}  // namespace tidewright
