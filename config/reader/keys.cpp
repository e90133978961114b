#include "config/reader/keys.hpp"

#include <array>

namespace tidewright::config {
namespace {

using enum Need;
using K = Kind;

// part, name, kind, need, example, standard, low, high, help
constexpr std::array rows{
    Key{Part::file, "room", K::id, required, "waterroom", "", "", "",
        "The room's name in every topic that is published."},
    Key{Part::file, "base", K::topic, optional, "tidewright", "tidewright", "", "",
        "First part of every topic that is published. A second daemon needs another."},
    Key{Part::file, "heartbeat", K::topic, optional, "tidewright-heartbeat", "", "", "",
        "The daemon's own topic, by which it sees that the broker still answers. "
        "If not given: base and \"-heartbeat\"."},
    Key{Part::file, "without_leak_sensor", K::sentence, optional,
        "I accept that nothing here notices water on the floor", "", "", "",
        "Allows fills that nobody watches in a room without a leak sensor."},
    Key{Part::file, "journal_kept", K::time, optional, "14 days", "14 days", "1 day", "90 days",
        "How long the journal goes back. Incidents are kept beyond it."},

    Key{Part::broker, "uri", K::text, optional, "mqtt://127.0.0.1:1883", "mqtt://127.0.0.1:1883",
        "", "",
        "Where the MQTT broker is; mqtts:// for an encrypted line, where its certificate must "
        "be for this very name or address."},
    Key{Part::broker, "username", K::text, optional, "tidewright", "", "", "",
        "The name by which the broker knows the daemon."},
    Key{Part::broker, "password_file", K::text, optional, "/etc/tidewright/password", "", "", "",
        "A file that holds the password and nothing else. It is read at start."},
    Key{Part::broker, "ca_file", K::text, optional, "/etc/tidewright/ca.pem", "", "", "",
        "Certificate of the authority that signed the broker's certificate. If not given: the "
        "authorities that this machine trusts."},
    Key{Part::broker, "certificate_file", K::text, optional, "/etc/tidewright/client.pem", "", "",
        "",
        "The daemon's own certificate, where the broker asks for one. As ca_file and key_file, "
        "it is read again at every connect."},
    Key{Part::broker, "key_file", K::text, optional, "/etc/tidewright/client.key", "", "", "",
        "The key of that certificate, in PEM form and without a password."},

    Key{Part::vat, "holds", K::text, optional, "pure water", "pure water", "", "",
        "What is in the vat, in your words."},
    Key{Part::vat, "volume", K::volume, required, "200 L", "", "1 L", "20000 L",
        "What the vat holds when it is full to the brim."},
    Key{Part::vat, "low", K::level, optional, "20 %", "", "", "",
        "Below this the vat is low and you are told."},
    Key{Part::vat, "start_below", K::level, optional, "40 %", "", "", "",
        "Below this a fill begins by itself."},
    Key{Part::vat, "stop_at", K::level, optional, "90 %", "", "", "", "Here every fill ends."},
    Key{Part::vat, "enough", K::level, optional, "50 %", "", "", "",
        "From here on the vat is ready for use. If not given: start_below, or half."},
    Key{Part::vat, "top_off_per_day", K::volume, optional, "4 L", "", "0 L", "500 L",
        "What the tank takes from this vat in a day, to tell how many days are left."},
    Key{Part::vat, "level", K::level_gauge, optional, "", "", "", "", "The vat's level gauge."},
    Key{Part::vat, "full", K::float_switch, optional, "", "", "", "",
        "A float switch that says: full."},
    Key{Part::vat, "high_high", K::float_switch, optional, "", "", "", "",
        "A float switch above every other mark, which only an overfilled vat reaches."},

    Key{Part::leak, "wet", K::words, optional, "wet", "wet", "", "",
        "The word, or the list of words, for water."},
    Key{Part::leak, "dry", K::words, optional, "dry", "dry", "", "",
        "The word, or the list of words, for no water."},

    Key{Part::purifier, "fills", K::id, optional, "pure", "", "", "", "The vat that it fills."},
    Key{Part::purifier, "driven_by", K::id, optional, "booster", "", "", "",
        "The actuator that makes it run. If not given, the daemon only watches."},
    Key{Part::purifier, "water_stops_with", K::choice, required, "valve | pump | nothing", "", "",
        "", "What stops the water. A stopped booster alone does not: line pressure keeps pushing."},
    Key{Part::purifier, "rated", K::flow, required, "280 L/day", "", "10 L/day", "20000 L/day",
        "Pure water that the membrane makes at 25 °C, as its label says."},
    Key{Part::purifier, "feed_tds", K::solids_meter, optional, "", "", "", "",
        "Meter before the membrane."},
    Key{Part::purifier, "permeate_tds", K::solids_meter, optional, "", "", "", "",
        "Meter between membrane and resin."},
    Key{Part::purifier, "lead_outlet_tds", K::solids_meter, optional, "", "", "", "",
        "Meter between the two resin canisters."},
    Key{Part::purifier, "product_tds", K::solids_meter, optional, "", "", "", "",
        "Meter after the resin."},
    Key{Part::purifier, "notify_ppm", K::solids, optional, "1 ppm", "1 ppm", "0.1 ppm", "50 ppm",
        "Product water at or above this is reported."},
    Key{Part::purifier, "stop_ppm", K::solids, optional, "3 ppm", "3 ppm", "0.1 ppm", "100 ppm",
        "Product water at or above this stops the pump, where on_breakthrough says so."},
    Key{Part::purifier, "on_breakthrough", K::choice, optional, "notify | stop_pump", "notify", "",
        "", "What happens when the product reaches stop_ppm."},
    Key{Part::purifier, "start_hours", K::hours, optional, "08:00-22:00", "", "", "",
        "Fills that nobody asked for begin only between these times of day."},
    Key{Part::purifier, "flow_lowest_credible", K::share, optional, "50 %", "50 %", "5 %", "100 %",
        "The least flow to reckon with, as a share of what is expected at this temperature."},
    Key{Part::purifier, "product_flush", K::time, optional, "2 min", "2 min", "0 s", "2 h",
        "After each start the product is not judged for this long."},
    Key{Part::purifier, "permeate_settles", K::time, optional, "5 min", "5 min", "0 s", "2 h",
        "After each start the permeate is not judged for this long."},
    Key{Part::purifier, "judged_over", K::time, optional, "5 min", "5 min", "0 s", "24 h",
        "The product is judged over at least this much running."},
    Key{Part::purifier, "judged_volume", K::volume, optional, "2 L", "2 L", "0 L", "100 L",
        "The product is judged over at least this much water."},
    Key{Part::purifier, "frost_below", K::temperature, optional, "4 °C", "4 °C", "0 °C", "15 °C",
        "In a colder room nothing starts."},

    Key{Part::temperature, "of", K::choice, optional, "room | feed water", "room", "", "",
        "What it measures. The room's is also watched for frost."},

    Key{Part::actuator, "role", K::choice, optional, "booster pump | feed valve", "booster pump",
        "", "", "What it drives."},
    Key{Part::actuator, "words", K::text, optional, "the booster pump", "", "", "",
        "What it is called in messages. If not given: \"the\" and its role."},
    Key{Part::actuator, "command", K::topic, required, "home/waterroom/booster/set", "", "", "",
        "The topic on which it listens."},
    Key{Part::actuator, "on", K::text, optional, "ON", "ON", "", "",
        "What switches it on; {seconds} in it becomes the lease."},
    Key{Part::actuator, "off", K::text, optional, "OFF", "OFF", "", "", "What switches it off."},
    Key{Part::actuator, "feedback", K::feedback, optional, "", "", "", "",
        "The topic on which it says whether it is on."},
    Key{Part::actuator, "power", K::power_meter, optional, "", "", "", "",
        "The power that it draws."},
    Key{Part::actuator, "lease_kept_by", K::choice, required,
        "plug | plug_fixed | device | hub | nobody", "", "", "",
        "What switches it off when the daemon falls silent: the plug's auto-off, begun anew by "
        "each ON (plug) or not (plug_fixed); the device, told by {seconds}; an automation of the "
        "hub; or nobody."},
    Key{Part::actuator, "lease", K::time, optional, "120 s", "120 s", "10 s", "1 h",
        "How long after the last ON it goes off by itself. It must agree with what is set there."},
    Key{Part::actuator, "automation", K::text, optional, "booster off after 2 minutes", "", "", "",
        "Name of the hub's automation that keeps the lease."},
    Key{Part::actuator, "travel", K::time, optional, "10 s", "0 s", "0 s", "5 min",
        "How long it takes to move, for a slow valve."},
    Key{Part::actuator, "run_longest", K::time, optional, "72 h", "72 h", "1 min", "7 days",
        "The longest that it may run without a pause."},
    Key{Part::actuator, "on_per_day_longest", K::time, optional, "24 h", "24 h", "1 min", "24 h",
        "The longest that it may run in a day."},
    Key{Part::actuator, "off_shortest", K::time, optional, "2 min", "2 min", "0 s", "1 h",
        "It rests at least this long."},
    Key{Part::actuator, "starts_per_hour_max", K::count, optional, "6", "6", "1", "60",
        "More starts than this in an hour wear a pump out and are reported."},
    Key{Part::actuator, "idle_below", K::power, optional, "5 W", "5 W", "0 W", "2 kW",
        "Drawing less than this, it does not work."},

    Key{Part::rule, "on_delay", K::time, optional, "10 s", "", "0 s", "24 h",
        "How long the cause must last before it counts."},
    Key{Part::rule, "off_delay", K::time, optional, "10 min", "", "0 s", "24 h",
        "How long the cause must be gone before it is over."},
    Key{Part::rule, "in_service", K::yes_no, optional, "false", "", "", "",
        "If false it is never announced; what it switches off is switched off all the same."},

    Key{Part::instrument, "topic", K::topic, required, "home/waterroom/leak", "", "", "",
        "The topic on which it speaks."},
    Key{Part::instrument, "pointer", K::pointer, optional, "/value", "", "", "",
        "Where in a JSON message the value is (RFC 6901)."},
    Key{Part::instrument, "time_pointer", K::pointer, optional, "/time", "", "", "",
        "Where in a JSON message its own time is."},
    Key{Part::instrument, "where", K::text, optional, "the floor by the drain", "", "", "",
        "Where it is, in words that anyone in the house understands."},
    Key{Part::instrument, "availability", K::availability, optional, "home/waterroom/leak/online",
        "", "", "", "The topic on which it says whether it is there."},

    Key{Part::word, "reports_every", K::time, optional, "60 s", "", "1 s", "1 h",
        "How often it speaks when nothing changes."},
    Key{Part::word, "on_change", K::yes_no, optional, "true", "", "", "",
        "It speaks only when something changes; then give check_in and availability too."},
    Key{Part::word, "check_in", K::time, optional, "24 h", "", "1 min", "25 h",
        "The longest that it is ever silent."},
    Key{Part::word, "unknown", K::words, optional, "unavailable", "", "", "",
        "Words by which it says that it does not know."},

    Key{Part::number, "unit", K::own_unit, required, "ppm", "", "", "",
        "The unit of what it shows."},
    Key{Part::number, "reports_every", K::time, required, "60 s", "", "1 s", "1 h",
        "How often it speaks."},
    Key{Part::number, "step", K::own_step, optional, "1 %", "", "", "", "One step of its display."},
    Key{Part::number, "scale", K::number, optional, "0.1", "", "", "",
        "What is shown is multiplied by this."},
    Key{Part::number, "offset", K::number, optional, "-2", "", "", "",
        "Added to what is shown, after the scale, in the unit of `unit`."},
    Key{Part::number, "points", K::own_points, optional, "[[0, \"0 L\"], [420, \"200 L\"]]", "", "",
        "", "Instead: two or more pairs of what is shown and what is then meant, rising."},
    Key{Part::number, "plausible", K::own_range, optional, "[\"1 °C\", \"45 °C\"]", "", "", "",
        "Least and greatest believable value; beyond them it is doubted."},

    Key{Part::float_switch, "reached", K::words, optional, "ON", "ON", "", "",
        "The word, or the list of words, for water at the switch."},
    Key{Part::float_switch, "clear", K::words, optional, "OFF", "OFF", "", "",
        "The word, or the list of words, for water below the switch."},
    Key{Part::float_switch, "at", K::level, optional, "95 %", "", "", "",
        "The level at which it switches."},

    Key{Part::feedback, "on", K::words, optional, "ON", "ON", "", "",
        "The word, or the list of words, for on."},
    Key{Part::feedback, "off", K::words, optional, "OFF", "OFF", "", "",
        "The word, or the list of words, for off."},

    Key{Part::availability, "topic", K::topic, required, "home/waterroom/leak/online", "", "", "",
        "The topic on which it says whether it is there."},
    Key{Part::availability, "online", K::text, optional, "online", "online", "", "",
        "The word for: there."},
    Key{Part::availability, "offline", K::text, optional, "offline", "offline", "", "",
        "The word for: gone."},
};

constexpr std::array heir_rows{
    Heir{"password", "password_file", "The password itself has no place in this file."},
    Heir{"notify_at", "notify_ppm", ""},
    Heir{"stop_above", "stop_at", ""},
    Heir{"size", "volume", ""},
    Heir{"capacity", "volume", ""},
    Heir{"interval", "reports_every", ""},
    Heir{"timeout", "reports_every", "Three missed reports count as silence."},
    Heir{"json_path", "pointer", ""},
};

constexpr std::array<std::string_view, part_count> titles{
    "the first lines of the file",
    "[broker]",
    "[vat.<id>]",
    "[leak.<id>]",
    "[purifier]",
    "[temperature.<id>]",
    "[actuator.<id>]",
    "[rule.<name>]",
    "every instrument",
    "leak, full, high_high, feedback",
    "level, temperature, …_tds, power",
    "full, high_high",
    "feedback",
    "availability",
};

constexpr std::array broker_parts{Part::broker};
constexpr std::array vat_parts{Part::vat};
constexpr std::array leak_parts{Part::instrument, Part::word, Part::leak};
constexpr std::array purifier_parts{Part::purifier};
constexpr std::array temperature_parts{Part::instrument, Part::number, Part::temperature};
constexpr std::array actuator_parts{Part::actuator};
constexpr std::array rule_parts{Part::rule};
constexpr std::array section_rows{
    SectionKind{"broker", false, broker_parts},
    SectionKind{"vat", true, vat_parts},
    SectionKind{"leak", true, leak_parts},
    SectionKind{"purifier", false, purifier_parts},
    SectionKind{"temperature", true, temperature_parts},
    SectionKind{"actuator", true, actuator_parts},
    SectionKind{"rule", true, rule_parts},
};

constexpr std::array number_parts{Part::instrument, Part::number};
constexpr std::array float_parts{Part::instrument, Part::word, Part::float_switch};
constexpr std::array feedback_parts{Part::instrument, Part::word, Part::feedback};
constexpr std::array availability_parts{Part::availability};

}  // namespace

std::span<const Key> keys() { return rows; }
std::span<const Heir> heirs() { return heir_rows; }
std::span<const SectionKind> section_kinds() { return section_rows; }
std::string_view title(Part part) { return titles[static_cast<std::size_t>(part)]; }

std::span<const Part> parts_of(Kind kind) {
  switch (kind) {
    case Kind::level_gauge:
    case Kind::solids_meter:
    case Kind::power_meter:
      return number_parts;
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
