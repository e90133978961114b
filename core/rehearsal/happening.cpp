#include "core/rehearsal/happening.hpp"

#include <array>
#include <charconv>
#include <optional>
#include <utility>

namespace tidewright::rehearsal {
namespace {

// The number between `before` and `after`, if the line is made of these three.
std::optional<double> amount(std::string_view line, std::string_view before,
                             std::string_view after) {
  if (!line.starts_with(before) || !line.ends_with(after)) return std::nullopt;
  line.remove_prefix(before.size());
  if (line.size() <= after.size()) return std::nullopt;
  line.remove_suffix(after.size());
  double number = 0;
  const auto [end, error] = std::from_chars(line.data(), line.data() + line.size(), number);
  if (error != std::errc{} || end != line.data() + line.size()) return std::nullopt;
  return number;
}

bool happen_in_numbers(Works& works, std::string_view line) {
  if (const auto litres = amount(line, "spill ", " l")) {
    works.spill(Litres{*litres});
  } else if (const auto drawn = amount(line, "draw ", " l")) {
    works.draw(Litres{*drawn});
  } else if (const auto poured = amount(line, "pour ", " l")) {
    works.pour(Litres{*poured});
  } else if (const auto burst = amount(line, "burst ", " l/h")) {
    works.burst = LitresPerHour{*burst};
  } else if (const auto lost = amount(line, "lose ", " l/h")) {
    works.loss = LitresPerHour{*lost};
  } else if (const auto feed = amount(line, "feed at ", " ppm")) {
    works.feed = PartsPerMillion{*feed};
  } else {
    return false;
  }
  return true;
}

bool happen_to_works(Works& works, std::string_view line) {
  using Act = void (*)(Works&);
  static constexpr std::array<std::pair<std::string_view, Act>, 18> acts{{
      {"dry the floor", [](Works& w) { w.dry_floor(); }},
      {"mend the burst", [](Works& w) { w.burst = LitresPerHour{0}; }},
      {"spend the resin", [](Works& w) { w.spend_resin(); }},
      {"rotate the resin", [](Works& w) { w.rotate_canisters(); }},
      {"replace the resin", [](Works& w) { w.replace_canisters(); }},
      {"shut the feed", [](Works& w) { w.feed_shut = true; }},
      {"open the feed", [](Works& w) { w.feed_shut = false; }},
      {"break the pump", [](Works& w) { w.pump_broken = true; }},
      {"mend the pump", [](Works& w) { w.pump_broken = false; }},
      {"stick the float valve", [](Works& w) { w.float_valve.stuck = true; }},
      {"close the float valve",
       [](Works& w) { w.float_valve.closed = w.float_valve.stuck = true; }},
      {"free the float valve", [](Works& w) { w.float_valve.stuck = false; }},
      {"stick the feed valve", [](Works& w) { w.feed_valve_stuck = true; }},
      {"free the feed valve", [](Works& w) { w.feed_valve_stuck = false; }},
      {"foul the membrane", [](Works& w) { w.membrane().foul(0.25); }},
      {"clean the membrane", [](Works& w) { w.membrane().foul(1); }},
      {"wear the membrane", [](Works& w) { w.membrane().wear(0.8); }},
      {"replace the membrane", [](Works& w) { w.membrane().wear(0.97); }},
  }};
  for (const auto& [words, act] : acts) {
    if (words != line) continue;
    act(works);
    return true;
  }
  return false;
}

bool happen_to_voice(Voice& voice, std::string_view what) {
  if (what == "falls silent") {
    voice.faults.silent = true;
  } else if (what == "sticks") {
    voice.faults.stuck = true;
  } else if (what == "talks garbage") {
    voice.faults.garbage = true;
  } else if (what == "works again") {
    voice.faults = {};
  } else {
    return false;
  }
  return true;
}

bool happen_to_plug(Plug& plug, std::string_view what) {
  if (what == "ignores on") {
    plug.faults.ignores_on = true;
  } else if (what == "ignores off") {
    plug.faults.ignores_off = true;
  } else if (what == "falls mute") {
    plug.faults.mute = true;
  } else if (what == "speaks again") {
    plug.faults.mute = false;
  } else if (what == "loses its timer") {
    plug.faults.timer = room::LeaseKind::none;
  } else if (what == "takes no renewal") {
    plug.faults.timer = room::LeaseKind::plug_fixed;
  } else if (what == "has its timer again") {
    plug.faults.timer.reset();
  } else if (what == "obeys again") {
    plug.faults.ignores_on = plug.faults.ignores_off = false;
  } else {
    return false;
  }
  return true;
}

}  // namespace

bool happen(PretendRoom& pretend, const room::Room& room, std::string_view line) {
  if (happen_in_numbers(pretend.works(), line)) return true;
  if (happen_to_works(pretend.works(), line)) return true;
  const std::size_t space = line.find(' ');
  if (space == std::string_view::npos) return false;
  const std::string_view first = line.substr(0, space);
  const std::string_view rest = line.substr(space + 1);
  for (std::size_t i = 0; i < room.actuators.size(); ++i) {
    Plug& plug = pretend.plug(static_cast<room::ActuatorIndex>(i));
    if (first == room.actuators[i].id) return happen_to_plug(plug, rest);
    if (first == "press" && rest == room.actuators[i].id) {
      plug.press(pretend.now());
      return true;
    }
  }
  for (std::size_t i = 0; i < room.instruments.size(); ++i) {
    if (first != room.instruments[i].id) continue;
    return happen_to_voice(pretend.voice(static_cast<room::InstrumentIndex>(i)), rest);
  }
  return false;
}

}  // namespace tidewright::rehearsal
