#include "daemon/hub/offer_rows.hpp"

namespace tidewright::hub {
namespace {

using room::Place;
using room::Quantity;
using room::Room;
using enum Shape;

constexpr std::string_view qualities[] = {"good", "uncertain", "bad"};
constexpr std::string_view vat_states[] = {"filling", "paused", "held", "full", "resting"};
constexpr std::string_view purifier_states[] = {"running", "resting"};
constexpr std::string_view lease_words[] = {"never tried", "kept", "not kept"};
constexpr std::string_view verdicts[] = {"nothing unusual", "leak", "slow production",
                                         "stuck float", "unusual draw"};

constexpr MadeFrom gauge[] = {{Quantity::level, Place::vat}};
constexpr MadeFrom mixing_gauge[] = {{Quantity::level, Place::mixing_vat}};
constexpr MadeFrom mixing_warmth[] = {{Quantity::temperature, Place::mixing_vat}};
constexpr MadeFrom feed[] = {{Quantity::dissolved_solids, Place::feed}};
constexpr MadeFrom permeate[] = {{Quantity::dissolved_solids, Place::permeate}};
constexpr MadeFrom lead_outlet[] = {{Quantity::dissolved_solids, Place::lead_outlet}};
constexpr MadeFrom product[] = {{Quantity::dissolved_solids, Place::product}};
constexpr MadeFrom feed_and_permeate[] = {feed[0], permeate[0]};
constexpr MadeFrom feed_pressure[] = {{Quantity::pressure, Place::feed}};

bool has_flow(const Room& room, Place place) {
  return room::find(room, Quantity::flow, place) || room::find(room, Quantity::water_count, place);
}
bool feed_flow(const Room& room) { return has_flow(room, Place::feed); }
bool product_flow(const Room& room) { return has_flow(room, Place::product); }
bool concentrate_flow(const Room& room) { return has_flow(room, Place::concentrate); }
bool both_flows(const Room& room) { return product_flow(room) && concentrate_flow(room); }
bool is_driven(const Room& room) { return room::driving(room).has_value(); }
bool is_cleaned(const Room& room) { return room.vat->clean_every.has_value(); }
bool is_drawn_from(const Room& room) { return room.vat->top_off_per_day.value > 0; }
bool is_stopped(const Room& room) { return room.vat->stop_at.has_value(); }

constexpr Row rows[] = {
    {"vat", "state", word, "Vat", "", "enum", false, vat_states},
    {"vat", "why", text, "Vat: why", "", "", true},
    {"vat", "volume_l", measure, "Vat: volume", "L", "volume_storage", false, {}, gauge},
    {"vat", "fill_percent", measure, "Vat: filled", "%", "", false, {}, gauge},
    {"vat", "rate_l_h", measure, "Vat: gain", "L/h", "", false, {}, gauge},
    {"vat", "full_at", moment, "Vat: full at", "", "timestamp", false, {}, gauge, is_stopped},
    {"vat", "ready", fact, "Vat: ready"},
    {"vat", "ready_at", moment, "Vat: ready at", "", "timestamp", false, {}, gauge},
    {"vat",
     "days_of_top_off",
     measure,
     "Vat: lasts for",
     "d",
     "duration",
     false,
     {},
     gauge,
     is_drawn_from},
    {"vat", "water_age_days", measure, "Vat: age of the water", "d", "duration", true, {}, gauge},
    {"vat", "cleaning_due_at", day, "Vat: cleaning due", "", "date", true, {}, {}, is_cleaned},
    {"vat", "quality", word, "Vat: quality of the level", "", "enum", true, qualities},

    {"mixing_vat",
     "volume_l",
     measure,
     "Mixing vat: volume",
     "L",
     "volume_storage",
     false,
     {},
     mixing_gauge},
    {"mixing_vat", "fill_percent", measure, "Mixing vat: filled", "%", "", false, {}, mixing_gauge},
    {"mixing_vat",
     "temperature_c",
     measure,
     "Mixing vat: temperature",
     "°C",
     "temperature",
     false,
     {},
     mixing_warmth},

    {"purifier", "state", word, "Purifier", "", "enum", false, purifier_states, {}, is_driven},
    {"purifier", "feed_tds_ppm", measure, "Feed: TDS", "ppm", "", false, {}, feed},
    {"purifier", "permeate_tds_ppm", measure, "Permeate: TDS", "ppm", "", false, {}, permeate},
    {"purifier",
     "lead_outlet_tds_ppm",
     measure,
     "First canister: TDS",
     "ppm",
     "",
     false,
     {},
     lead_outlet},
    {"purifier", "product_tds_ppm", measure, "Product: TDS", "ppm", "", false, {}, product},
    {"purifier",
     "product_judged_ppm",
     measure,
     "Product: TDS as judged",
     "ppm",
     "",
     true,
     {},
     product},
    {"purifier",
     "rejection_percent",
     measure,
     "Membrane: rejection",
     "%",
     "",
     false,
     {},
     feed_and_permeate},
    {"purifier", "feed_flow_l_h", measure, "Feed: flow", "L/h", "", false, {}, {}, feed_flow},
    {"purifier",
     "product_flow_l_h",
     measure,
     "Product: flow",
     "L/h",
     "",
     false,
     {},
     {},
     product_flow},
    {"purifier",
     "concentrate_flow_l_h",
     measure,
     "Concentrate: flow",
     "L/h",
     "",
     false,
     {},
     {},
     concentrate_flow},
    {"purifier",
     "feed_pressure_bar",
     measure,
     "Feed: pressure",
     "bar",
     "pressure",
     false,
     {},
     feed_pressure},
    {"purifier",
     "recovery_percent",
     measure,
     "Membrane: recovery",
     "%",
     "",
     false,
     {},
     {},
     both_flows},
    {"purifier", "flow_at_25c_l_h", measure, "Membrane: flow at 25 °C", "L/h", "", true, {}, gauge},

    {"resin", "passed_l", measure, "Resin: water passed", "L", "", true},
    {"resin", "litres_left", measure, "Resin: water left", "L", "", false, {}, permeate},
    {"resin", "used_percent", measure, "Resin: used", "%", "", false, {}, permeate},
    {"resin", "days_left", measure, "Resin: lasts for", "d", "duration", false, {}, permeate},
    {"resin", "spent_at", day, "Resin: spent on", "", "date", false, {}, permeate},
    {"resin", "advice", text, "Resin: what to do", "", "", false, {}, permeate},

    {"way", "open", fact, "open", "", "connectivity", true},
    {"way", "waiting", measure, "waiting", "letters", "", true},
    {"way", "arrived", moment, "last arrival", "", "timestamp", true},

    {"actuator", "wanted", fact, "wanted", "", "", true},
    {"actuator", "tripped", fact, "held off", "", "", true},
    {"actuator", "override", fact, "switched by hand", "", "", true},
    {"actuator", "lease_proof", word, "lease", "", "enum", true, lease_words},
    {"actuator", "run_hours_total", total, "run hours", "h", "duration", true},

    {"ledger", "made_total_l", total, "Pure water made", "L", "water"},
    {"ledger", "fill_gained_l", measure, "Fill: gained", "L", "", true},
    {"ledger", "fill_to_go_l", measure, "Fill: to go", "L", "", true},

    {"balance", "verdict", word, "Water balance", "", "enum", false, verdicts},
    {"balance", "litres", measure, "Water balance: litres", "L", "", true},
    {"balance", "confidence_percent", measure, "Water balance: confidence", "%", "", true},
    {"balance", "usual_fall_l_h", measure, "Water balance: usual fall", "L/h", "", true},
};

}  // namespace

std::span<const Row> offer_rows() { return rows; }

}  // namespace tidewright::hub
