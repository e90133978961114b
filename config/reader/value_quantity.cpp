#include <fmt/format.h>
#include <fmt/ranges.h>

#include "config/reader/nearest.hpp"
#include "config/reader/value_parts.hpp"
#include "config/reader/wording.hpp"

namespace tidewright::config {
namespace {

std::string unit_hint(const Key& key, std::string_view number) {
  std::vector<std::string> ways;
  for (const auto unit : usual_units(key.kind))
    ways.push_back(fmt::format("\"{} {}\"", number, unit));
  return fmt::format("Write {}.", fmt::join(ways, " or "));
}

void refuse_misread(const Key& key, const Node& node, const Misread& misread, Problems& problems) {
  const std::string written = as_written(node);
  switch (misread.fault) {
    case Misread::Fault::decimal_comma:
      return refuse(key, node.at, written + ", with a decimal comma",
                    fmt::format("Write \"{} {}\".", misread.number,
                                misread.unit.empty() ? usual_units(key.kind).front()
                                                     : std::string_view{misread.unit}),
                    problems);
    case Misread::Fault::no_unit:
      return refuse(key, node.at, written + ", without a unit", unit_hint(key, misread.number),
                    problems);
    case Misread::Fault::not_a_number:
      return refuse(key, node.at, written, std::string{key.help}, problems);
    case Misread::Fault::unknown_unit: {
      const auto known = units_accepted(key.kind);
      const std::string_view near = nearest(misread.unit, known);
      problems.add(node.at,
                   fmt::format("`{}` is {}; expected {}, and not \"{}\"{}", key.name, written,
                               units_of(key.kind), misread.unit, did_you_mean(near, "\"")),
                   unit_hint(key, misread.number));
      return;
    }
  }
}

}  // namespace

bool read_quantity_value(const Key& key, const Node& node, Value& value, Problems& problems) {
  std::string text = node.text;
  if (node.kind == Node::Kind::number) {
    // The names of these keys end in the unit: it is said already.
    if (key.kind == Kind::solids) text += " ppm";
  } else if (node.kind != Node::Kind::text) {
    refuse(key, node.at, as_written(node), std::string{key.help}, problems);
    return false;
  }
  const auto read = read_quantity(text);
  if (const auto* misread = std::get_if<Misread>(&read)) {
    refuse_misread(key, node, *misread, problems);
    return false;
  }
  value.measure = std::get<Measure>(read);
  if (!accepts(key.kind, value.measure.unit->dimension)) {
    refuse(key, node.at,
           fmt::format("{}, which is {}", as_written(node),
                       config::name_of(value.measure.unit->dimension)),
           std::string{key.help}, problems);
    return false;
  }
  value.number = value.measure.in_base();
  if (value.number < 0 && key.kind != Kind::temperature && key.low.empty()) {
    refuse(key, node.at, as_written(node) + ", less than nothing", std::string{key.help}, problems);
    return false;
  }
  return within_limits(key, node, value.number, problems);
}

}  // namespace tidewright::config
