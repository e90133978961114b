#include "daemon/showing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <unordered_set>
#include <utility>

#include "daemon/base/instance.hpp"
#include "daemon/hub/discovery.hpp"
#include "daemon/hub/offer.hpp"
#include "daemon/hub/parts.hpp"
#include "daemon/log/log.hpp"

namespace tidewright {
namespace {

// A disk that refuses is asked again after so long.
constexpr std::chrono::seconds patience{60};
constexpr int file_mark = 0x74776862;  // "twhb"

}  // namespace

Showing::Showing(const config::Household& household, const std::filesystem::path& state_directory)
    : household_(household),
      place_{household.base, household.room.id},
      file_(state_directory / "hub.db", file_mark) {
  if (!file_.unreadable().empty()) {
    log::warning(fmt::format(
        "What hubs were told could not be read ({}). They are told anew, under new ids: remove the "
        "old device there by hand.",
        file_.unreadable()));
  }
  if (const auto& text = file_.text()) known_ = hub::manifest_of(*text).value_or(hub::Manifest{});
  auto parts = hub::adopt(household, known_.parts);
  named_ = kept_ = !known_.instance.empty() && parts == known_.parts;
  if (known_.instance.empty()) known_.instance = new_instance();
  known_.parts = std::move(parts);
}

Showing::Everything Showing::everything(const State& state, const report::Report& report) {
  Everything all = made(state, report);
  promise(all);
  // Under an id that is not written down nothing is to be found: it could not stay the same.
  if (!named_) {
    if (household_.hub.discovery) {
      known_.topics.erase(all.plain.front().topic);
      all.plain.erase(all.plain.begin());
    }
    for (const hub::Message& message : all.homie) known_.topics.erase(message.topic);
    all.homie.clear();
  }
  take_back(all);
  return all;
}

Showing::Everything Showing::made(const State& state, const report::Report& report) {
  const config::Hub& wanted = household_.hub;
  Everything all;
  if (wanted.discovery || wanted.homie) {
    const hub::View view{household_, report, known_.parts, state.armed.token};
    const auto offers = hub::offers(view);
    if (wanted.homie) all.homie = hub::homie(offers, view, known_);
    if (wanted.discovery) {
      components_ = hub::components_of(offers);
      // Before the values: a button may be pressed as soon as they say so, and must know its token.
      all.plain.push_back(hub::discovery(offers, household_, known_));
    }
  }
  for (hub::Message& each : hub::plain(report, place_)) all.plain.push_back(std::move(each));
  return all;
}

std::optional<hub::HomieSet> Showing::set(const State& state, const hub::Letter& letter) const {
  const report::Report report = report::describe(household_.room, state);
  const auto offers = hub::offers({household_, report, known_.parts, state.armed.token});
  return hub::homie_set(offers, known_, letter, letter.topic);
}

// What is about to be told is written down before.
void Showing::promise(const Everything& all) {
  const auto know = [this](const std::string& topic) {
    kept_ = !known_.topics.insert(topic).second && kept_;
  };
  know(place_.base + "/online");
  if (household_.hub.homie) know(homie_state());
  for (const auto* messages : {&all.plain, &all.homie}) {
    for (const hub::Message& message : *messages) know(message.topic);
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

bool Showing::is_homies(const std::string& topic) const {
  return household_.hub.homie && topic.starts_with(hub::homie_device(known_) + "/");
}

// First what another convention or another prefix left (of a Homie device its `$state`, which ends
// it), then, after the news, what is ours.
void Showing::take_back(Everything& all) const {
  std::unordered_set<std::string_view> shown;
  for (const auto* messages : {&all.plain, &all.homie}) {
    for (const hub::Message& message : *messages) shown.insert(message.topic);
  }
  std::vector<hub::Message> first, last, homies;
  for (const std::string& topic : known_.topics) {
    const bool ours = topic.starts_with(place_.base + "/");
    if (shown.contains(topic) || topic == place_.base + "/online") continue;
    if (household_.hub.homie && topic == homie_state()) continue;
    (is_homies(topic) ? homies : ours ? last : first).push_back({topic, ""});
  }
  std::stable_partition(first.begin(), first.end(), [](const hub::Message& message) {
    return message.topic.ends_with("/$state");
  });
  all.plain.insert(all.plain.begin(), first.begin(), first.end());
  all.plain.insert(all.plain.end(), last.begin(), last.end());
  all.homie.insert(all.homie.end(), homies.begin(), homies.end());
}

// Once in a run: fields that come and go later are not worth a write each time.
bool Showing::arrived(const std::vector<hub::Message>& plain,
                      const std::vector<hub::Message>& homie) {
  if (tidied_ || !kept_ || plain.empty()) return false;
  tidied_ = true;
  hub::Manifest next{known_.instance, known_.parts, components_, {place_.base + "/online"}};
  if (household_.hub.homie) next.topics.insert(homie_state());
  for (const auto* messages : {&plain, &homie}) {
    for (const hub::Message& message : *messages) {
      if (!message.payload.empty()) next.topics.insert(message.topic);
    }
  }
  return next != known_ && keep(std::move(next));
}

}  // namespace tidewright
