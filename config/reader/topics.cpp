#include <fmt/format.h>

#include "config/reader/draft.hpp"

namespace tidewright::config {
namespace {

// One use of a topic by the file.
struct Use {
  enum class As : std::uint8_t { reading, availability, command };
  As as{};
  const std::string* topic = nullptr;
  std::string_view pointer;  // of a reading in a JSON message
  std::string owner;         // "`feedback` of [actuator.booster]"
  Spot at;
};

std::vector<Use> uses_of(const Draft& draft) {
  std::vector<Use> uses;
  const auto& household = draft.household;
  for (std::size_t i = 0; i < household.outlets.size(); ++i) {
    const Section& actuator = draft.actuators[i];
    uses.push_back({Use::As::command, &household.outlets[i].topic, "",
                    fmt::format("`command` of {}", actuator.title()), actuator.at("command")});
  }
  for (std::size_t i = 0; i < household.sources.size(); ++i) {
    const Source& source = household.sources[i];
    const Section& section = *draft.instruments[i];
    uses.push_back(
        {Use::As::reading, &source.topic, source.pointer, section.title(), section.at("topic")});
    if (!source.availability) continue;
    const Section& availability = *section.table("availability");
    uses.push_back({Use::As::availability, &source.availability->topic, "", availability.title(),
                    availability.at("topic")});
  }
  return uses;
}

// Whether two uses of one topic get in each other's way. Several instruments may share a JSON
// message, and an availability topic.
bool clash(const Use& a, const Use& b) {
  if (*a.topic != *b.topic || a.topic->empty()) return false;
  if (a.as == Use::As::command || b.as == Use::As::command) return true;
  return a.as == Use::As::reading && b.as == Use::As::reading && a.pointer == b.pointer;
}

void refuse_clash(Draft& draft, const Use& later, const Use& first) {
  const bool command = first.as == Use::As::command || later.as == Use::As::command;
  const bool both_commands = first.as == later.as;
  std::string_view hint = "Each instrument has its own topic, or its own pointer into one.";
  if (command && both_commands) hint = "Each actuator listens on its own topic.";
  if (command && !both_commands) {
    hint =
        "The daemon would hear its own command and take it for an answer. Look for the topic on "
        "which the device itself speaks.";
  }
  draft.problems.add(later.at,
                     fmt::format("topic \"{}\" of {} is already {} in line {}; expected another",
                                 *later.topic, later.owner, first.owner, first.at.line),
                     std::string{hint});
}

// What the daemon publishes is not to be read by it, nor commanded.
void check_own(Draft& draft, const Use& use) {
  const std::string& base = draft.household.base;
  const bool below_base = *use.topic == base || use.topic->starts_with(base + "/");
  if (base.empty() || (!below_base && *use.topic != draft.household.heartbeat)) return;
  draft.problems.add(use.at,
                     fmt::format("topic \"{}\" of {} is one of the daemon's own; expected one that "
                                 "does not begin with \"{}/\"",
                                 *use.topic, use.owner, base),
                     "The daemon publishes there. `base` at the top of the file changes where.");
}

}  // namespace

void check_topics(Draft& draft) {
  const std::vector<Use> uses = uses_of(draft);
  for (std::size_t later = 0; later < uses.size(); ++later) {
    check_own(draft, uses[later]);
    for (std::size_t first = 0; first < later; ++first) {
      if (!clash(uses[first], uses[later])) continue;
      refuse_clash(draft, uses[later], uses[first]);
      break;
    }
  }
}

}  // namespace tidewright::config
