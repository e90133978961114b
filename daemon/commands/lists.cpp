#include <fmt/format.h>

#include "config/reader/keys.hpp"
#include "core/interlock/matrix.hpp"
#include "core/report/phrases.hpp"
#include "core/room/instrument.hpp"
#include "core/rules/catalogue.hpp"
#include "daemon/commands/listing.hpp"

namespace tidewright::commands {
namespace {

struct QuantityRow {
  room::Quantity quantity;
  const char* name;
  const char* meaning;
};

constexpr QuantityRow quantities[] = {
    {room::Quantity::wetness, "wetness", "whether a leak sensor is wet"},
    {room::Quantity::level, "level", "water in the vat"},
    {room::Quantity::float_switch, "float_switch", "whether the water has lifted a float"},
    {room::Quantity::dissolved_solids, "dissolved_solids", "what a TDS meter shows"},
    {room::Quantity::temperature, "temperature", "of the room or the water"},
    {room::Quantity::power, "power", "what a plug's load draws"},
    {room::Quantity::feedback, "feedback", "whether a plug or valve says that it is on"},
    {room::Quantity::flow, "flow", "of feed, product or concentrate"},
    {room::Quantity::water_count, "water_count", "what a water meter has counted in all"},
    {room::Quantity::pressure, "pressure", "of the feed water, above the air"},
};

const char* hold_word(interlock::Hold hold) {
  switch (hold) {
    case interlock::Hold::none:
      return "-";
    case interlock::Hold::inhibit:
      return "may not start";
    case interlock::Hold::force_off:
      return "off";
    case interlock::Hold::trip:
      return "off and held";
  }
  return "-";
}

std::string reset_word(const interlock::Row& row) {
  if (interlock::trips(row)) return "always";
  if (row.latches_at_stop == 0) return "never";
  return fmt::format("from stop {} within 24 h on", row.latches_at_stop);
}

std::string bounds(const config::Key& key) {
  if (key.low.empty() && key.high.empty()) return "";
  return fmt::format("{} to {}", key.low.empty() ? "any" : key.low,
                     key.high.empty() ? "any" : key.high);
}

}  // namespace

Listing list_alarms() {
  Listing listing{"The alarms", {"alarm", "priority", "respond_within", "title"}, {}};
  for (const rules::Rule* rule : rules::catalogue) {
    listing.rows.push_back({std::string(rule->name),
                            std::to_string(static_cast<int>(rule->priority)),
                            report::lasting(rule->respond_within), std::string(rule->title)});
  }
  return listing;
}

Listing list_keys() {
  Listing listing{"The keys of the household's file",
                  {"part", "key", "need", "example", "if_not_given", "range", "help"},
                  {}};
  for (const config::Key& key : config::keys()) {
    const bool required = key.need == config::Need::required;
    listing.rows.push_back({std::string(config::title(key.part)), std::string(key.name),
                            required ? "required" : "optional", std::string(key.example),
                            std::string(key.standard), bounds(key), std::string(key.help)});
  }
  return listing;
}

Listing list_quantities() {
  Listing listing{"What instruments measure", {"quantity", "unit", "meaning"}, {}};
  for (const QuantityRow& row : quantities) {
    const auto unit = report::unit(row.quantity);
    listing.rows.push_back({row.name, unit.empty() ? "yes or no" : std::string(unit), row.meaning});
  }
  return listing;
}

// In order of precedence, as the interlock reads it.
Listing list_interlocks() {
  Listing listing{"What stops what", {"name", "cause"}, {}};
  for (const room::RoleFacts& role : room::role_facts) listing.columns.emplace_back(role.name);
  listing.columns.emplace_back("needs_reset");
  listing.columns.emplace_back("bypass_at_most");
  for (const interlock::Row& row : interlock::matrix()) {
    std::vector<std::string> cells{std::string(room::name(row.id)), std::string(row.cause)};
    for (const interlock::Hold hold : row.holds.items) cells.emplace_back(hold_word(hold));
    cells.push_back(reset_word(row));
    const bool never = row.bypass_longest <= Duration{0};
    cells.push_back(never ? "never" : report::lasting(row.bypass_longest));
    listing.rows.push_back(std::move(cells));
  }
  return listing;
}

// As `base` and `room` of the household's file name them.
Listing list_topics() {
  return {"The topics",
          {"topic", "direction", "kept", "meaning"},
          {{"<base>/online", "out", "retained", "online or offline; the will says offline"},
           {"<base>/<room>/vat/<id>", "out", "retained", "volume, rate, readiness of a vat"},
           {"<base>/<room>/mixing_vat", "out", "retained", "volume and temperature"},
           {"<base>/<room>/purifier", "out", "retained", "dissolved solids, rejection, flow"},
           {"<base>/<room>/resin/lead", "out", "retained", "litres and days left of the resin"},
           {"<base>/<room>/actuator/<id>", "out", "retained", "command, feedback, what holds it"},
           {"<base>/<room>/alarm/<name>", "out", "retained", "an alarm's state and its record"},
           {"<base>/<room>/source/<id>", "out", "retained", "an instrument's value and quality"},
           {"<base>/<room>/source/<id>/online", "out", "retained", "online or offline"},
           {"<base>/<room>/supply/<id>", "out", "retained", "stock, and when to order"},
           {"<base>/<room>/ledger", "out", "retained", "litres made, the fill under way"},
           {"<base>/<room>/way/<name>", "out", "retained",
            "a way to people without a hub: whether it is open, what waits, its trouble"},
           {"<base>/<room>/protection", "out", "retained", "bypasses, proof tests and their dates"},
           {"<base>/<room>/balance", "out", "retained",
            "verdict, litres and confidence; the usual and the allowed fall; the last draw"},
           {"<base>/<room>/value/<thing>/<name>", "out", "retained", "each value by itself"},
           {"<base>/<room>/announcement", "out", "no", "an alarm in words, as it is told"},
           {"<prefix>/device/tidewright_<instance>/config", "out", "retained",
            "all that a hub needs to show the room by itself"},
           {"<prefix>/status", "in", "-", "a hub says online: it is told again"},
           {"homie/5/tidewright-<instance>/#", "both", "retained", "the same by Homie, if wanted"},
           {"<base>/<room>/ask", "in", "refused", "a person's request"},
           {"<base>/<room>/tell", "in", "refused", "a person's fact"},
           {"<base>/<room>/answer", "out", "no", "what became of an ask or a tell"}}};
}

}  // namespace tidewright::commands
