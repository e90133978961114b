#include "daemon/intake/topics.hpp"

namespace tidewright::intake {

Topics::Topics(const config::Household& household) {
  for (std::size_t i = 0; i < household.sources.size(); ++i) {
    const config::Source& source = household.sources[i];
    const auto instrument = static_cast<room::InstrumentIndex>(i);
    add(source.topic, {Target::Kind::reading, instrument});
    if (source.availability) {
      add(source.availability->topic, {Target::Kind::availability, instrument});
    }
  }
}

void Topics::add(const std::string& topic, Target target) {
  std::vector<Target>& targets = targets_[topic];
  if (targets.empty()) subscriptions_.push_back(topic);
  targets.push_back(target);
}

std::span<const Target> Topics::find(std::string_view topic) const {
  const auto found = targets_.find(topic);
  if (found == targets_.end()) return {};
  return found->second;
}

}  // namespace tidewright::intake
