#include "daemon/hub/parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>

namespace tidewright::hub {
namespace {

// In the order of the enumerators; as ids they outlive the program's versions.
constexpr std::array<std::string_view, 10> quantities{
    "wetness", "level",    "float", "solids", "temperature",
    "power",   "feedback", "flow",  "count",  "pressure"};
constexpr std::array<std::string_view, 11> places{
    "floor",   "vat",         "high_high",  "feed", "permeate", "lead_outlet",
    "product", "concentrate", "mixing_vat", "room", "plug"};
constexpr std::string_view supply_sort = "supply";

// What a thing is, whatever it is called: the key without its number.
std::string sort_of(const room::Room& room, const room::Instrument& instrument) {
  const std::string_view quantity = quantities[static_cast<std::size_t>(instrument.quantity)];
  if (instrument.place == room::Place::plug && instrument.subject < room.actuators.size()) {
    return fmt::format("{}_{}", quantity,
                       room::facts(room.actuators[instrument.subject].role).name);
  }
  return fmt::format("{}_{}", quantity, places[static_cast<std::size_t>(instrument.place)]);
}

std::string_view sort_of(const Part& part) {
  return std::string_view(part.key).substr(0, part.key.rfind('_'));
}

int number_of(const Part& part) {
  int number = 0;
  const std::string_view digits = std::string_view(part.key).substr(part.key.rfind('_') + 1);
  std::from_chars(digits.data(), digits.data() + digits.size(), number);
  return number;
}

struct Thing {
  std::string sort, name, where;
  std::string key{};  // once it is found
};

std::string where_of(const config::Source& source) {
  std::string where = source.topic;
  for (const std::string& within : {source.pointer, source.senml_name}) {
    if (!within.empty()) where += " " + within;
  }
  return where;
}

std::vector<Thing> things_of(const config::Household& household) {
  std::vector<Thing> things;
  for (std::size_t i = 0; i < household.sources.size(); ++i) {
    const room::Instrument& instrument = household.room.instruments[i];
    things.push_back(
        {sort_of(household.room, instrument), instrument.id, where_of(household.sources[i])});
  }
  for (const room::Supply& supply : household.room.supplies) {
    things.push_back({std::string(supply_sort), supply.id, ""});
  }
  return things;
}

class Adoption {
 public:
  Adoption(const config::Household& household, std::vector<Part> known)
      : things_(things_of(household)), known_(std::move(known)) {}

  std::vector<Part> result() {
    match([](const Thing& thing, const Part& part) { return thing.name == part.name; });
    match([](const Thing& thing, const Part& part) {
      return !thing.where.empty() && thing.where == part.where;
    });
    match([this](const Thing& thing, const Part& part) {
      return part.present && is_only(thing, part);
    });
    for (Part& part : known_) part.present = false;
    for (Thing& thing : things_) {
      if (thing.key.empty()) thing.key = fmt::format("{}_{}", thing.sort, next_number(thing.sort));
      const auto part = std::find_if(known_.begin(), known_.end(),
                                     [&](const Part& each) { return each.key == thing.key; });
      const Part now{thing.key, thing.name, thing.where, true};
      part == known_.end() ? known_.push_back(now) : void(*part = now);
    }
    return std::move(known_);
  }

 private:
  template <class Same>
  void match(Same same) {
    for (Thing& thing : things_) {
      if (!thing.key.empty()) continue;
      const auto found = std::find_if(known_.begin(), known_.end(), [&](const Part& part) {
        return is_free(part) && sort_of(part) == thing.sort && same(thing, part);
      });
      if (found != known_.end()) thing.key = found->key;
    }
  }
  bool is_free(const Part& part) const {
    return std::none_of(things_.begin(), things_.end(),
                        [&](const Thing& thing) { return thing.key == part.key; });
  }
  bool is_only(const Thing& thing, const Part& part) const {
    const auto nameless = std::count_if(things_.begin(), things_.end(), [&](const Thing& other) {
      return other.key.empty() && other.sort == thing.sort;
    });
    const auto missing = std::count_if(known_.begin(), known_.end(), [&](const Part& other) {
      return other.present && is_free(other) && sort_of(other) == sort_of(part);
    });
    return nameless == 1 && missing == 1;
  }
  int next_number(std::string_view sort) const {
    int highest = 0;
    for (const Part& part : known_) {
      if (sort_of(part) == sort) highest = std::max(highest, number_of(part));
    }
    return highest + 1;
  }

  std::vector<Thing> things_;
  std::vector<Part> known_;
};

const std::string& key_named(const std::vector<Part>& parts, std::string_view sort,
                             std::string_view name) {
  const auto found = std::find_if(parts.begin(), parts.end(), [&](const Part& part) {
    return part.present && part.name == name && sort_of(part) == sort;
  });
  return found->key;
}

}  // namespace

std::vector<Part> adopt(const config::Household& household, std::vector<Part> known) {
  return Adoption(household, std::move(known)).result();
}

const std::string& key_of(const std::vector<Part>& parts, const room::Room& room,
                          room::InstrumentIndex i) {
  return key_named(parts, sort_of(room, room.instruments[i]), room.instruments[i].id);
}

const std::string& supply_key_of(const std::vector<Part>& parts, const room::Room& room,
                                 room::SupplyIndex i) {
  return key_named(parts, supply_sort, room.supplies[i].id);
}

}  // namespace tidewright::hub
