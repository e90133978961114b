// What a hub is offered of the room: what it can show, and what a person can press there. Pure, and
// of no hub: a convention (hub/discovery) writes offers in its own words.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "config/household.hpp"
#include "core/report/report.hpp"
#include "daemon/hub/manifest.hpp"
#include "daemon/hub/plain.hpp"

namespace tidewright::hub {

enum class Shape : std::uint8_t {
  measure,  // a number of now
  total,    // a number that only grows
  word,     // one of `options`
  text,
  moment,  // ISO 8601 with offset
  day,     // ISO 8601
  fact,    // true or false
  press,   // publishes `request`
  entry,   // a number between two texts: `request`, number, `request_end`
  story,   // the announcements, one JSON each
};

struct Offer {
  std::string key;   // fixed for ever; unique in the room
  std::string node;  // the thing that it is of: the key's beginning; empty of what is asked
  Shape shape{};
  std::string name;                      // for people
  std::string topic;                     // where it is published, or asked for
  const report::Field* field = nullptr;  // what is published there
  std::string_view meaning = {};         // a word of the trade, as hubs have it: `moisture`
  std::string unit = {};
  std::vector<std::string_view> options = {};
  bool aside = false;                     // for who looks after the room, not for every day
  std::vector<std::string> sources = {};  // topics that must say `online`
  std::string open_while = {};            // a topic that must say `true`, of a press
  std::string request = {}, request_end = {};
  double low = 0, high = 0, step = 1;  // of an entry
};

// What offers are made of. All of it outlives them.
struct View {
  const config::Household& household;
  const report::Report& report;
  const std::vector<Part>& parts;
  std::uint32_t token = 0;  // of the reset that is armed
};

// In the order of the report, then what can be asked and told.
std::vector<Offer> offers(const View&);

}  // namespace tidewright::hub
