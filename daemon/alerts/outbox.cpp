#include "daemon/alerts/outbox.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

namespace tidewright::alerts {
namespace {

using nlohmann::json;
using post::Fate;
using post::Way;

}  // namespace

Outbox::Outbox(std::string instance, std::uint32_t taken)
    : instance_(std::move(instance)), taken_(taken) {}

std::optional<Outbox> Outbox::of(std::string_view text) {
  try {
    const json document = json::parse(text);
    Outbox outbox{document.at("instance"), document.at("taken")};
    for (const json& each : document.at("letters")) {
      const Way way = post::way_named(each.at("way").get<std::string>()).value();
      const Instant not_before{Duration{each.at("not_before").get<std::int64_t>()}};
      outbox.entries_.push_back(
          {{{each.at("notice"), way, each.at("body")}, each.at("of"), not_before},
           each.at("refusals")});
    }
    return outbox;
  } catch (const std::exception&) {
    return std::nullopt;
  }
}

Outbox Outbox::resumed(const std::optional<Outbox>& kept, std::string instance,
                       std::uint32_t last) {
  if (kept && kept->taken_ <= last) return *kept;
  Outbox outbox(std::move(instance), last);
  if (kept) outbox.entries_ = kept->entries_;
  return outbox;
}

std::string Outbox::to_text() const {
  json document{{"instance", instance_}, {"taken", taken_}, {"letters", json::array()}};
  for (const auto& [composed, refusals] : entries_) {
    document["letters"].push_back({{"notice", composed.letter.notice},
                                   {"way", name(composed.letter.way)},
                                   {"body", composed.letter.body},
                                   {"of", composed.of},
                                   {"not_before", composed.not_before.time_since_epoch().count()},
                                   {"refusals", refusals}});
  }
  return document.dump(-1, ' ', false, json::error_handler_t::replace);
}

Outbox::Taken Outbox::take(const config::Household& household, const State& state) {
  Taken taken;
  for (std::uint32_t number = taken_ + 1; number <= state.notices.last; ++number) {
    const state::Notice& notice = state.notices.items[number % state::notices_kept];
    if (notice.number != number) continue;
    taken.news = true;
    taken.given_up += put(number, compose(household, state, notice, instance_));
  }
  return taken;
}

std::size_t Outbox::put(std::uint32_t notice, const std::vector<Composed>& letters) {
  taken_ = notice;
  std::size_t given_up = 0;
  for (const Composed& each : letters) {
    const Way way = each.letter.way;
    if (!each.of.empty()) {
      std::erase_if(entries_, [&](const Entry& entry) {
        return entry.composed.of == each.of && entry.composed.letter.way == way;
      });
    }
    entries_.push_back({each, 0});
    if (waiting(way) <= letters_most) continue;
    entries_.erase(std::find_if(entries_.begin(), entries_.end(), [way](const Entry& entry) {
      return entry.composed.letter.way == way;
    }));
    ++given_up;
  }
  return given_up;
}

std::vector<post::Letter> Outbox::due(Way way, Instant now) const {
  std::vector<post::Letter> letters;
  for (const auto& [composed, refusals] : entries_) {
    if (composed.letter.way == way && composed.not_before <= now) {
      letters.push_back(composed.letter);
    }
  }
  return letters;
}

Instant Outbox::next_due(Way way, Instant now) const {
  Instant next = never;
  for (const auto& [composed, refusals] : entries_) {
    if (composed.letter.way == way && composed.not_before > now) {
      next = std::min(next, composed.not_before);
    }
  }
  return next;
}

std::size_t Outbox::waiting(Way way) const {
  return static_cast<std::size_t>(
      std::count_if(entries_.begin(), entries_.end(),
                    [way](const Entry& entry) { return entry.composed.letter.way == way; }));
}

bool Outbox::settle(const post::Outcome& outcome) {
  const auto found = std::find_if(entries_.begin(), entries_.end(), [&](const Entry& entry) {
    return entry.composed.letter.notice == outcome.notice &&
           entry.composed.letter.way == outcome.way;
  });
  if (found == entries_.end() || outcome.fate == Fate::failed) return true;
  const bool refused = outcome.fate == Fate::refused;
  if (refused && ++found->refusals < refusals_most) return true;
  entries_.erase(found);
  return !refused;
}

void Outbox::drop(Way way) {
  std::erase_if(entries_, [way](const Entry& entry) { return entry.composed.letter.way == way; });
}

}  // namespace tidewright::alerts
