// Which keys stand together: the sections of the file, and the tables within them.
#include <array>

#include "config/reader/keys.hpp"

namespace tidewright::config {
namespace {

constexpr std::array<std::string_view, part_count> titles{
    "the first lines of the file",
    "[broker]",
    "[hub]",
    "[panel]",
    "[alerts]",
    "[webhook]",
    "[mail]",
    "[vat.<id>]",
    "[mixing_vat]",
    "[leak.<id>]",
    "[purifier]",
    "[temperature.<id>]",
    "[actuator.<id>]",
    "[supply.<id>]",
    "[rule.<name>]",
    "every instrument",
    "leak, full, high_high, concentrate_full, feedback",
    "level, temperature, …_tds, …_flow, …_pressure, power",
    "…_flow",
    "full, high_high, concentrate_full",
    "feedback",
    "availability",
};

constexpr std::array broker_parts{Part::broker};
constexpr std::array hub_parts{Part::hub};
constexpr std::array panel_parts{Part::panel};
constexpr std::array alerts_parts{Part::alerts};
constexpr std::array webhook_parts{Part::webhook};
constexpr std::array mail_parts{Part::mail};
constexpr std::array vat_parts{Part::vat};
constexpr std::array mixing_vat_parts{Part::mixing_vat};
constexpr std::array leak_parts{Part::instrument, Part::word, Part::leak};
constexpr std::array purifier_parts{Part::purifier};
constexpr std::array temperature_parts{Part::instrument, Part::number, Part::temperature};
constexpr std::array actuator_parts{Part::actuator};
constexpr std::array supply_parts{Part::supply};
constexpr std::array rule_parts{Part::rule};
constexpr std::array section_rows{
    SectionKind{"broker", false, broker_parts},
    SectionKind{"hub", false, hub_parts},
    SectionKind{"panel", false, panel_parts},
    SectionKind{"alerts", false, alerts_parts},
    SectionKind{"webhook", false, webhook_parts},
    SectionKind{"mail", false, mail_parts},
    SectionKind{"vat", true, vat_parts},
    SectionKind{"mixing_vat", false, mixing_vat_parts},
    SectionKind{"leak", true, leak_parts},
    SectionKind{"purifier", false, purifier_parts},
    SectionKind{"temperature", true, temperature_parts},
    SectionKind{"actuator", true, actuator_parts},
    SectionKind{"supply", true, supply_parts},
    SectionKind{"rule", true, rule_parts},
};

constexpr std::array number_parts{Part::instrument, Part::number};
constexpr std::array flow_parts{Part::instrument, Part::number, Part::water_meter};
constexpr std::array float_parts{Part::instrument, Part::word, Part::float_switch};
constexpr std::array feedback_parts{Part::instrument, Part::word, Part::feedback};
constexpr std::array availability_parts{Part::availability};

}  // namespace

std::span<const SectionKind> section_kinds() { return section_rows; }
std::string_view title(Part part) { return titles[static_cast<std::size_t>(part)]; }

std::span<const Part> parts_of(Kind kind) {
  switch (kind) {
    case Kind::level_gauge:
    case Kind::thermometer:
    case Kind::solids_meter:
    case Kind::power_meter:
    case Kind::pressure_meter:
    case Kind::twin:
      return number_parts;
    case Kind::flow_meter:
      return flow_parts;
    case Kind::float_switch:
      return float_parts;
    case Kind::feedback:
      return feedback_parts;
    case Kind::availability:
      return availability_parts;
    default:
      return {};
  }
}

}  // namespace tidewright::config
