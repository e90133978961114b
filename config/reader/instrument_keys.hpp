// The rows of what every instrument has, and of what its kind has besides. Read by keys.cpp only.
#pragma once

#include <array>

#include "config/reader/keys.hpp"

namespace tidewright::config {

// part, name, kind, need, example, standard, low, high, help
inline constexpr std::array instrument_key_rows{
    Key{Part::instrument, "topic", Kind::topic, Need::required, "home/waterroom/leak", "", "", "",
        "The topic on which it speaks."},
    Key{Part::instrument, "pointer", Kind::pointer, Need::optional, "/value", "", "", "",
        "Where in a JSON message the value is (RFC 6901)."},
    Key{Part::instrument, "time_pointer", Kind::pointer, Need::optional, "/time", "", "", "",
        "Where in a JSON message its own time is."},
    Key{Part::instrument, "senml", Kind::text, Need::optional, "urn:dev:ow:10e2073a01080063", "",
        "", "",
        "It sends SenML packs (RFC 8428): the name of its record in them, or \"*\" where all have "
        "one name. The pack's own unit and time are understood."},
    Key{Part::instrument, "where", Kind::text, Need::optional, "the floor by the drain", "", "", "",
        "Where it is, in words that anyone in the house understands."},
    Key{Part::instrument, "availability", Kind::availability, Need::optional,
        "home/waterroom/leak/online", "", "", "",
        "The topic on which it says whether it is there."},

    Key{Part::word, "reports_every", Kind::time, Need::optional, "60 s", "", "1 s", "1 h",
        "How often it speaks when nothing changes."},
    Key{Part::word, "on_change", Kind::yes_no, Need::optional, "true", "", "", "",
        "It speaks only when something changes; then give check_in and availability too."},
    Key{Part::word, "check_in", Kind::time, Need::optional, "24 h", "", "1 min", "25 h",
        "The longest that it is ever silent."},
    Key{Part::word, "unknown", Kind::words, Need::optional, "unavailable", "", "", "",
        "Words by which it says that it does not know."},

    Key{Part::number, "unit", Kind::own_unit, Need::required, "ppm", "", "", "",
        "The unit of what it shows."},
    Key{Part::number, "reports_every", Kind::time, Need::required, "60 s", "", "1 s", "1 h",
        "How often it speaks."},
    Key{Part::number, "step", Kind::own_step, Need::optional, "1 %", "", "", "",
        "One step of its display."},
    Key{Part::number, "scale", Kind::number, Need::optional, "0.1", "", "", "",
        "What is shown is multiplied by this."},
    Key{Part::number, "offset", Kind::number, Need::optional, "-2", "", "", "",
        "Added to what is shown, after the scale, in the unit of `unit`."},
    Key{Part::number, "points", Kind::own_points, Need::optional,
        "[[0, \"0 L\"], [420, \"200 L\"]]", "", "", "",
        "Instead: two or more pairs of what is shown and what is then meant, rising."},
    Key{Part::number, "plausible", Kind::own_range, Need::optional, "[\"1 °C\", \"45 °C\"]", "", "",
        "", "Least and greatest believable value; beyond them it is doubted."},
    Key{Part::number, "median_of", Kind::count, Need::optional, "3", "1", "1", "5",
        "1, 3 or 5: what is believed is the median of so many readings, so that one or two "
        "outliers are passed over."},
    Key{Part::number, "flat_after", Kind::time, Need::optional, "24 h", "", "10 min", "30 days",
        "The same value for longer is doubted; dissolved solids only while water runs, and after "
        "24 h if not given."},
    Key{Part::number, "twin", Kind::twin, Need::optional, "", "", "", "",
        "A second instrument of the same thing. Where they differ both are doubted, and the more "
        "dangerous reading rules."},
    Key{Part::number, "agrees_within", Kind::own_step, Need::optional, "3 %", "", "", "",
        "How far its twin may differ."},

    Key{Part::water_meter, "wraps_at", Kind::volume, Need::optional, "10000 L", "", "10 L",
        "10000000 L", "Of a meter that counts: where it begins anew at 0."},

    Key{Part::float_switch, "reached", Kind::words, Need::optional, "ON", "ON", "", "",
        "The word, or the list of words, for water at the switch."},
    Key{Part::float_switch, "clear", Kind::words, Need::optional, "OFF", "OFF", "", "",
        "The word, or the list of words, for water below the switch."},
    Key{Part::float_switch, "at", Kind::level, Need::optional, "95 %", "", "", "",
        "The level at which it switches."},

    Key{Part::feedback, "on", Kind::words, Need::optional, "ON", "ON", "", "",
        "The word, or the list of words, for on."},
    Key{Part::feedback, "off", Kind::words, Need::optional, "OFF", "OFF", "", "",
        "The word, or the list of words, for off."},

    Key{Part::availability, "topic", Kind::topic, Need::required, "home/waterroom/leak/online", "",
        "", "", "The topic on which it says whether it is there."},
    Key{Part::availability, "online", Kind::text, Need::optional, "online", "online", "", "",
        "The word for: there."},
    Key{Part::availability, "offline", Kind::text, Need::optional, "offline", "offline", "", "",
        "The word for: gone."},
};

}  // namespace tidewright::config
