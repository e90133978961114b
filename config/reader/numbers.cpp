#include "config/reader/numbers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "config/reader/nearest.hpp"
#include "config/reader/wording.hpp"

namespace tidewright::config {
namespace {

// Ranges in the quantity's own unit; of a level as a share of the vat. Beyond gross it is no
// reading: digital one-wire thermometers reach from -55 to 125 °C (from memory). Frost is
// plausible: it must be believed, to hold the pump. A count moves no faster than a household pipe
// gives, a litre a second. Common practice, no source.
struct Profile {
  room::Quantity quantity{};
  Kind kind{};  // how such a value is written
  double gross_low = 0, gross_high = 0;
  double plausible_low = 0, plausible_high = 0;
  double step = 0;
  double per_second_max = 0;  // of a level in litres: a bucket or a hose, and one step
  double agrees_within = 0;   // twins may differ by this, or
  double agrees_share = 0;    //   by this share of what they say [choice]
};
constexpr std::array profiles{
    Profile{room::Quantity::level, Kind::level, -0.1, 1.2, -0.02, 1.05, 0.01, 2, 0.03, 0},
    Profile{room::Quantity::dissolved_solids, Kind::solids, 0, 10'000, 0, 2'000, 1, 0, 2, 0.1},
    Profile{room::Quantity::temperature, Kind::temperature, -55, 125, -20, 45, 0.1, 1, 1, 0},
    Profile{room::Quantity::power, Kind::power, -5, 4'000, -1, 3'000, 1, 0, 5, 0.1},
    Profile{room::Quantity::flow, Kind::flow, -5, 5'000, -0.5, 2'000, 0.1, 0, 0.5, 0.1},
    Profile{room::Quantity::water_count, Kind::volume, 0, 1e9, 0, 1e9, 1, 1, 0, 0},
    Profile{room::Quantity::pressure, Kind::pressure, -1, 30, -0.2, 15, 0.1, 0, 0.2, 0.05},
};
// Dissolved solids that have not moved for so long while water ran. [choice]
constexpr Duration solids_flat_after = std::chrono::hours{24};
// What digital one-wire thermometers say before their first measurement (from memory).
constexpr Celsius power_up{85};

// A row like `step`, read as a quantity of the instrument's own kind.
Key in_own_terms(std::string_view name, Kind kind) {
  const auto row = std::find_if(keys().begin(), keys().end(), [&](const Key& key) {
    return key.part == Part::number && key.name == name;
  });
  Key key = *row;
  key.kind = kind;
  const bool step = name == "step";
  switch (kind) {
    case Kind::level:
      key.example = step ? "1 %" : "50 %";
      break;
    case Kind::solids:
      key.example = step ? "1 ppm" : "100 ppm";
      break;
    case Kind::temperature:
      key.example = step ? "0.1 °C" : "20 °C";
      break;
    case Kind::flow:
      key.example = step ? "0.1 L/h" : "20 L/h";
      break;
    case Kind::volume:
      key.example = step ? "1 L" : "100 L";
      break;
    case Kind::pressure:
      key.example = step ? "0.1 bar" : "3 bar";
      break;
    default:
      key.example = step ? "1 W" : "50 W";
  }
  return key;
}

class Numbers {
 public:
  Numbers(Draft& draft, const Section& section, const Profile& profile, const Described& described)
      : draft_(draft),
        section_(section),
        profile_(profile),
        is_twin_(described.twin_of != no_subject),
        whole_(profile.kind == Kind::level && described.vat_litres > 0 ? described.vat_litres : 1) {
  }

  void read(room::Instrument& instrument, Source& source) {
    instrument.gross_low = profile_.gross_low * whole_;
    instrument.gross_high = profile_.gross_high * whole_;
    instrument.plausible_low = profile_.plausible_low * whole_;
    instrument.plausible_high = profile_.plausible_high * whole_;
    instrument.step = read_own("step").value_or(profile_.step * whole_);
    source.whole = whole_;
    read_plausible(instrument);
    read_tests(instrument);
    if (profile_.per_second_max > 0) {
      const bool level = profile_.kind == Kind::level;
      instrument.per_second_max = profile_.per_second_max + (level ? instrument.step : 0);
    }
    if (const Value* points = section_.told("points")) return read_points(*points, source);
    read_scale(source);
    const bool as_made = profile_.kind == Kind::temperature && section_.number("scale", 1) == 1;
    if (as_made) instrument.power_up = power_up.value + source.offset - unit_offset_;
  }

 private:
  // In the instrument's own unit.
  double own(const Value& value) const {
    return value.measure.unit->dimension == Dimension::share ? value.number * whole_ : value.number;
  }

  // A quantity of the instrument's own kind, as a difference of two.
  std::optional<double> read_own(std::string_view name) {
    const Value* told = section_.told(name);
    if (told == nullptr) return std::nullopt;
    const Key key = in_own_terms(name, profile_.kind);
    const auto value = read_value(key, told->node, draft_.problems);
    if (!value) return std::nullopt;
    const bool share = value->measure.unit->dimension == Dimension::share;
    return value->measure.step_in_base() * (share ? whole_ : 1);
  }

  void read_tests(room::Instrument& instrument) {
    const auto within = read_own("agrees_within");
    instrument.agrees_within = within.value_or(profile_.agrees_within * whole_);
    instrument.agrees_share = within ? 0 : profile_.agrees_share;
    instrument.wraps_at = section_.number("wraps_at");
    if (profile_.kind == Kind::solids) instrument.flat_after = solids_flat_after;
    if (section_.told("flat_after") != nullptr) {
      instrument.flat_after = duration(section_, "flat_after");
    }
    instrument.median_of = static_cast<int>(section_.number("median_of", 1));
    if (instrument.median_of % 2 == 0) {
      draft_.problems.add(section_.at("median_of"),
                          fmt::format("`median_of` is {} in {}; expected 1, 3 or 5",
                                      instrument.median_of, section_.title()),
                          "Of an even number of readings none is in the middle.");
    }
    if (profile_.kind == Kind::flow && section_.mentions("wraps_at")) {
      draft_.problems.add(section_.at("wraps_at"),
                          fmt::format("`wraps_at` is given in {}, which shows a flow; expected it "
                                      "only of a meter that counts",
                                      section_.title()),
                          "Where it counts litres, its `unit` is \"L\".");
    }
  }

  void read_plausible(room::Instrument& instrument) {
    const Value* range = section_.told("plausible");
    if (range == nullptr) return;
    const Key key = in_own_terms("plausible", profile_.kind);
    if (range->node.children.size() != 2) {
      draft_.problems.add(
          range->at,
          fmt::format("`plausible` has {} values; expected two, the least and the greatest",
                      range->node.children.size()),
          std::string{key.help});
      return;
    }
    const auto low = read_value(key, range->node.children[0], draft_.problems);
    const auto high = read_value(key, range->node.children[1], draft_.problems);
    if (!low || !high) return;
    instrument.plausible_low = own(*low);
    instrument.plausible_high = own(*high);
    if (own(*low) >= own(*high)) {
      draft_.problems.add(high->at,
                          fmt::format("`plausible` ends at \"{}\", which is not above \"{}\"; "
                                      "expected the least value first",
                                      high->text, low->text),
                          std::string{key.help});
    }
  }

  const UnitWord* read_unit() {
    const Value* unit = section_.told("unit");
    if (unit == nullptr) return nullptr;
    for (const UnitWord& candidate : unit_words()) {
      if (candidate.word == unit->node.text && accepts(profile_.kind, candidate.dimension)) {
        return &candidate;
      }
    }
    // A water meter may show either; its twin must show the same.
    const bool water = profile_.kind == Kind::flow || profile_.kind == Kind::volume;
    const Kind kind = water && !is_twin_ ? Kind::flow_meter : profile_.kind;
    const auto known = units_accepted(kind);
    const std::string conductivity =
        profile_.kind == Kind::solids && unit->node.text.ends_with("S/cm")
            ? "A conductivity is not ppm: set the meter to ppm, or give `points`."
            : "The unit of what it shows.";
    draft_.problems.add(
        unit->at,
        fmt::format("`unit` is \"{}\" in {}; expected {}{}", unit->node.text, section_.title(),
                    units_of(kind), did_you_mean(nearest(unit->node.text, known), "\"")),
        conductivity);
    return nullptr;
  }

  // own = (shown * scale + offset) * factor + unit's offset
  void read_scale(Source& source) {
    const UnitWord* unit = read_unit();
    if (unit == nullptr) return;
    const double factor = unit->factor * (unit->dimension == Dimension::share ? whole_ : 1);
    const double scale = section_.number("scale", 1);
    if (scale == 0) {
      draft_.problems.add(
          section_.at("scale"),
          fmt::format("`scale` is 0 in {}; expected another number", section_.title()),
          "With 0 every reading would be the same.");
    }
    source.scale = scale * factor;
    source.offset = section_.number("offset") * factor + unit->offset;
    unit_offset_ = unit->offset;
  }

  void read_points(const Value& points, Source& source) {
    for (const std::string_view key : {"scale", "offset"}) {
      if (!section_.mentions(key)) continue;
      draft_.problems.add(
          section_.at(key),
          fmt::format("`{}` and `points` are both given in {}; expected one of them", key,
                      section_.title()),
          "The points say everything already.");
    }
    if (points.node.children.size() < 2) {
      draft_.problems.add(points.at,
                          fmt::format("`points` has {} of them in {}; expected at least 2",
                                      points.node.children.size(), section_.title()),
                          "Below the first and above the last point nothing is read.");
    }
    for (const Node& pair : points.node.children) read_point(pair, source);
  }

  void read_point(const Node& pair, Source& source) {
    const Key key = in_own_terms("points", profile_.kind);
    if (pair.kind != Node::Kind::array || pair.children.size() != 2 ||
        pair.children[0].kind != Node::Kind::number) {
      draft_.problems.add(pair.at,
                          fmt::format("a point of {} is {}; expected a pair, such as [420, \"{}\"]",
                                      section_.title(), as_written(pair), key.example),
                          "What is shown, a number; then what is meant, a quantity.");
      return;
    }
    const auto meant = read_value(key, pair.children[1], draft_.problems);
    if (!meant) return;
    const CalibrationPoint point{pair.children[0].number, own(*meant)};
    if (!goes_on(source.points, point)) {
      draft_.problems.add(pair.at,
                          fmt::format("the point [{}, \"{}\"] of {} turns back; expected what is "
                                      "shown to rise, and what is meant always to rise or to fall",
                                      pair.children[0].text, meant->text, section_.title()),
                          "Write the points in the order of what is shown.");
    }
    source.points.push_back(point);
  }

  // Strictly monotone, so that each reading means one thing.
  static bool goes_on(const std::vector<CalibrationPoint>& points, const CalibrationPoint& next) {
    if (points.empty()) return true;
    const CalibrationPoint& last = points.back();
    if (next.shown <= last.shown || next.meant == last.meant) return false;
    return points.size() < 2 || (next.meant > last.meant) == (last.meant > points.front().meant);
  }

  Draft& draft_;
  const Section& section_;
  const Profile& profile_;
  bool is_twin_;
  double unit_offset_ = 0;
  double whole_;  // litres that a share of one stands for
};

}  // namespace

void read_numbers(Draft& draft, const Section& section, const Described& described,
                  room::Instrument& instrument, Source& source) {
  const auto* profile = std::find_if(profiles.begin(), profiles.end(), [&](const Profile& p) {
    return p.quantity == described.quantity;
  });
  Numbers{draft, section, *profile, described}.read(instrument, source);
}

}  // namespace tidewright::config
