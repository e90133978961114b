#include "config/reader/instruments.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "config/reader/numbers.hpp"

namespace tidewright::config {
namespace {

struct WordKeys {
  room::Quantity quantity{};
  std::string_view on;
  std::string_view off;
};
constexpr std::array word_keys{
    WordKeys{room::Quantity::wetness, "wet", "dry"},
    WordKeys{room::Quantity::float_switch, "reached", "clear"},
    WordKeys{room::Quantity::feedback, "on", "off"},
};

constexpr std::chrono::hours longest_silence{25};

std::vector<std::string> words(const Section& section, std::string_view key) {
  const Value* value = section.value(key);
  return value == nullptr ? std::vector<std::string>{} : value->words;
}

void read_words(Draft& draft, const Section& section, const WordKeys& keys, Source& source) {
  source.on_words = words(section, keys.on);
  source.off_words = words(section, keys.off);
  source.unknown_words = {"unavailable", "unknown"};
  for (const std::string& word : words(section, "unknown")) source.unknown_words.push_back(word);

  const auto used_twice = [&](const std::string& word) {
    return std::find(source.off_words.begin(), source.off_words.end(), word) !=
           source.off_words.end();
  };
  const auto twice = std::find_if(source.on_words.begin(), source.on_words.end(), used_twice);
  if (twice == source.on_words.end()) return;
  draft.problems.add(section.at(keys.off),
                     fmt::format("\"{}\" stands for both `{}` and `{}` in {}; expected two words",
                                 *twice, keys.on, keys.off, section.title()),
                     "Look at what the sensor really sends in both cases.");
}

// A sensor that speaks on change only must be known to be there in some other way.
void check_on_change(Draft& draft, const Section& section) {
  const auto missing = [&](std::string_view key, std::string_view example) {
    if (section.mentions(key)) return;
    draft.problems.add(
        section.at("on_change"),
        fmt::format("`{}` is missing in {}, which speaks on change only; expected {}", key,
                    section.title(), example),
        "Silence is no proof of a dry floor: the sensor must show that it is still there. "
        "Without this it cannot be used.");
  };
  missing("check_in", "a time of at most 25 h, such as \"24 h\"");
  missing("availability", "its topic, such as \"home/waterroom/leak/online\"");
}

void read_supervision(Draft& draft, const Section& section, room::Instrument& instrument) {
  const Value* on_change = section.told("on_change");
  const bool speaks_on_change = on_change != nullptr && on_change->number > 0;
  const bool reports = section.mentions("reports_every");
  const bool may_be_silent = instrument.quantity == room::Quantity::feedback;
  instrument.reports_every = duration(section, "reports_every");
  if (speaks_on_change && reports) {
    draft.problems.add(section.at("on_change"),
                       fmt::format("`on_change` and `reports_every` are both given in {}; expected "
                                   "one of them",
                                   section.title()),
                       "Keep reports_every if it also speaks when nothing changes.");
  } else if (speaks_on_change && !may_be_silent) {
    check_on_change(draft, section);
  } else if (!reports && !speaks_on_change && !may_be_silent) {
    draft.problems.add(section.at(),
                       fmt::format("`reports_every` is missing in {}; expected a time, such as "
                                   "\"60 s\"",
                                   section.title()),
                       "How often it speaks when nothing changes. If it speaks on change only: "
                       "on_change = true, with check_in and availability.");
  }
  if (!reports) {
    instrument.on_change = true;
    instrument.reports_every =
        section.told("check_in") != nullptr ? duration(section, "check_in") : longest_silence;
  }
}

void read_availability(Draft& draft, const Section& section, room::Instrument& instrument,
                       Source& source) {
  const Section* availability = section.table("availability");
  if (availability == nullptr) return;
  instrument.has_availability = true;
  source.availability = AvailabilityTopic{.topic = availability->text("topic"),
                                          .online = availability->text("online"),
                                          .offline = availability->text("offline")};
  const std::string& online = source.availability->online;
  if (online.empty() || online != source.availability->offline) return;
  draft.problems.add(availability->at(availability->mentions("offline") ? "offline" : "online"),
                     fmt::format("\"{}\" stands for both `online` and `offline` in {}; expected "
                                 "two words",
                                 online, availability->title()),
                     "Look at what the sensor really sends in both cases.");
}

// How the payload is read, as the keys that are there say.
Form form_of(Draft& draft, const Section& section, Form plain) {
  const bool json = section.mentions("pointer") || section.mentions("time_pointer");
  if (!section.mentions("senml")) return json ? Form::json : plain;
  for (const std::string_view key : {"pointer", "time_pointer", "scale", "offset"}) {
    if (!section.mentions(key)) continue;
    draft.problems.add(
        section.at(key),
        fmt::format("`{}` and `senml` are both given in {}; expected one of them", key,
                    section.title()),
        "A SenML pack says itself where its value is, in which unit, and when it was "
        "measured.");
  }
  return Form::senml;
}

void check_id(Draft& draft, const Section& section, const std::string& id) {
  if (id.size() > 64) {
    draft.problems.add(section.at(),
                       fmt::format("the id \"{}\" of {} has {} letters; expected at most 64", id,
                                   section.title(), id.size()),
                       "Give the section a shorter name.");
  }
  const auto& instruments = draft.household.room.instruments;
  const auto same = std::find_if(instruments.begin(), instruments.end(),
                                 [&](const room::Instrument& other) { return other.id == id; });
  if (same == instruments.end()) return;
  const auto index = static_cast<std::size_t>(same - instruments.begin());
  const Section& other = *draft.instruments[index];
  draft.problems.add(section.at(),
                     fmt::format("{} would be the second instrument \"{}\", after {} in line {}",
                                 section.title(), id, other.title(), other.at().line),
                     "Give one of the two sections another name.");
}

// A second one beside it, in the same words but for its name.
void add_twin(Draft& draft, const Section& section, Described described) {
  const Section* twin = section.table("twin");
  if (twin == nullptr) return;
  if (described.twin_of != no_subject) {
    draft.problems.add(
        section.at("twin"),
        fmt::format("`twin` is given in {}; expected two instruments, not three", section.title()),
        "Take one of them out.");
    return;
  }
  if (described.quantity == room::Quantity::water_count) {
    draft.problems.add(section.at("twin"),
                       fmt::format("`twin` is given in {}, which counts; expected one only of a "
                                   "meter that shows a flow",
                                   section.title()),
                       "Two counts began at different times and never agree.");
    return;
  }
  described.twin_of = static_cast<std::uint8_t>(draft.household.room.instruments.size() - 1);
  described.id += "_twin";
  described.where += ", the second";
  add_instrument(draft, *twin, described);
}

}  // namespace

void add_instrument(Draft& draft, const Section& section, const Described& described) {
  room::Instrument instrument;
  instrument.id = described.id;
  instrument.quantity = described.quantity;
  instrument.place = described.place;
  instrument.subject = described.subject;
  instrument.twin_of = described.twin_of;
  instrument.where = section.told("where") != nullptr ? section.text("where") : described.where;

  Source source;
  source.topic = section.text("topic");
  source.pointer = section.text("pointer");
  source.time_pointer = section.text("time_pointer");
  read_availability(draft, section, instrument, source);
  if (section.text("senml") != "*") source.senml_name = section.text("senml");

  const auto* keys = std::find_if(
      word_keys.begin(), word_keys.end(),
      [&](const WordKeys& candidate) { return candidate.quantity == described.quantity; });
  if (keys != word_keys.end()) {
    source.form = form_of(draft, section, Form::word);
    instrument.gross_high = instrument.plausible_high = 1;
    read_words(draft, section, *keys, source);
    read_supervision(draft, section, instrument);
  } else {
    source.form = form_of(draft, section, Form::number);
    instrument.reports_every = duration(section, "reports_every");
    read_numbers(draft, section, described, instrument, source);
  }
  check_id(draft, section, described.id);
  draft.household.room.instruments.push_back(std::move(instrument));
  draft.household.sources.push_back(std::move(source));
  draft.instruments.push_back(&section);
  add_twin(draft, section, described);
}

}  // namespace tidewright::config
