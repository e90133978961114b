#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>

#include "config/reader/draft.hpp"
#include "config/reader/nearest.hpp"
#include "config/reader/wording.hpp"

namespace tidewright::config {
namespace {

constexpr std::array file_parts{Part::file};

// Where each of section_kinds() is kept: one table, or one for each thing of its kind.
struct Chapter {
  std::string_view name;
  std::optional<Section> Draft::*one = nullptr;
  std::vector<Section> Draft::*many = nullptr;
};
constexpr std::array chapters{
    Chapter{.name = "broker", .one = &Draft::broker},
    Chapter{.name = "hub", .one = &Draft::hub},
    Chapter{.name = "panel", .one = &Draft::panel},
    Chapter{.name = "alerts", .one = &Draft::alerts},
    Chapter{.name = "webhook", .one = &Draft::webhook},
    Chapter{.name = "mail", .one = &Draft::mail},
    Chapter{.name = "vat", .many = &Draft::vats},
    Chapter{.name = "mixing_vat", .one = &Draft::mixing_vat},
    Chapter{.name = "leak", .many = &Draft::leaks},
    Chapter{.name = "purifier", .one = &Draft::purifier},
    Chapter{.name = "temperature", .many = &Draft::temperatures},
    Chapter{.name = "actuator", .many = &Draft::actuators},
    Chapter{.name = "supply", .many = &Draft::supplies},
    Chapter{.name = "rule", .many = &Draft::rules},
};

std::span<const Part> parts_of(const Chapter& chapter) {
  const auto kinds = section_kinds();
  return std::find_if(kinds.begin(), kinds.end(),
                      [&](const SectionKind& kind) { return kind.name == chapter.name; })
      ->parts;
}

std::string example_of(const Chapter& chapter) {
  return chapter.one != nullptr ? fmt::format("[{}]", chapter.name)
                                : fmt::format("[{}.<name>]", chapter.name);
}

void refuse_no_table(const Node& node, const Chapter& chapter, Problems& problems) {
  problems.add(node.at,
               fmt::format("`{}` is {}; expected a section {}", node.key, as_written(node),
                           example_of(chapter)),
               "A section begins with its name in brackets on a line of its own.");
}

constexpr Key section_name{Part::file, "name", Kind::id, Need::required, "pure", "", "", "", ""};

// [vat.pure] and its like: one section for each name.
void read_named(const Node& node, const Chapter& chapter, Draft& draft) {
  std::vector<Section>& sections = draft.*chapter.many;
  for (const Node& child : node.children) {
    if (child.kind != Node::Kind::table) {
      draft.problems.add(child.key_at,
                         fmt::format("`{}` stands in [{}], which has no name; expected {}",
                                     child.key, chapter.name, example_of(chapter)),
                         "Give the thing a name of your own, after a dot.");
      continue;
    }
    Node name;
    name.kind = Node::Kind::text;
    name.at = child.key_at;
    name.text = child.key;
    read_value(section_name, name, draft.problems);
    sections.emplace_back(child, fmt::format("[{}.{}]", chapter.name, child.key), child.key,
                          parts_of(chapter), draft.problems);
  }
}

// Takes the sections out of the file's top and reads them; what is left are plain keys.
void read_chapters(Node& file, Draft& draft) {
  std::erase_if(file.children, [&](const Node& node) {
    const auto* chapter = std::find_if(chapters.begin(), chapters.end(),
                                       [&](const Chapter& c) { return c.name == node.key; });
    if (chapter != chapters.end()) {
      if (node.kind != Node::Kind::table) {
        refuse_no_table(node, *chapter, draft.problems);
      } else if (chapter->one != nullptr) {
        (draft.*chapter->one)
            .emplace(node, fmt::format("[{}]", chapter->name), "", parts_of(*chapter),
                     draft.problems);
      } else {
        read_named(node, *chapter, draft);
      }
      return true;
    }
    if (node.kind != Node::Kind::table) return false;
    std::vector<std::string_view> names;
    names.reserve(chapters.size());
    for (const Chapter& known : chapters) names.push_back(known.name);
    draft.problems.add(node.key_at,
                       fmt::format("there is no section [{}]{}", node.key,
                                   did_you_mean(nearest(node.key, names), "\"")),
                       fmt::format("The sections are {}.", listed(names, "and")));
    return true;
  });
}

void read_file(const Section& file, Household& household) {
  household.room.id = file.text("room");
  household.base = file.text("base");
  household.heartbeat =
      file.told("heartbeat") != nullptr ? file.text("heartbeat") : household.base + "-heartbeat";
  household.journal_kept = duration(file, "journal_kept");
  household.room.accepts_no_leak_sensor = file.told("without_leak_sensor") != nullptr;
}

void understand(Draft& draft) {
  read_file(*draft.file, draft.household);
  read_broker(draft);
  read_hub(draft);
  read_panel(draft);
  read_alerts(draft);
  read_vat(draft);
  read_mixing_vat(draft);
  read_leaks(draft);
  read_temperatures(draft);
  read_actuators(draft);
  read_purifier(draft);
  read_supplies(draft);
  read_rules(draft);
  check_together(draft);
}

}  // namespace

Duration duration(const Section& section, std::string_view key) {
  return Duration{std::llround(section.number(key) * 1000)};
}

void needs(Draft& draft, const Section& from, std::string_view key, std::string_view other,
           std::string_view hint) {
  if (!from.mentions(key) || from.mentions(other)) return;
  draft.problems.add(
      from.at(key),
      fmt::format("`{}` stands alone in {}; expected `{}` beside it", key, from.title(), other),
      std::string{hint});
}

std::vector<Problem> Problems::sorted() && {
  std::stable_sort(found_.begin(), found_.end(), [](const Problem& a, const Problem& b) {
    return std::tie(a.line, a.column) < std::tie(b.line, b.column);
  });
  return std::move(found_);
}

Understood read(std::string_view text) {
  auto parsed = parse(text);
  if (auto* problem = std::get_if<Problem>(&parsed)) return {std::nullopt, {std::move(*problem)}};
  Draft draft;
  Node& file = std::get<Node>(parsed);
  read_chapters(file, draft);
  draft.file.emplace(file, "the first lines of the file", "", file_parts, draft.problems);
  understand(draft);
  Understood understood;
  understood.problems = std::move(draft.problems).sorted();
  if (understood.problems.empty()) understood.household = std::move(draft.household);
  return understood;
}

}  // namespace tidewright::config
