#include "config/reader/keys.hpp"

#include <algorithm>
#include <array>

#include "config/reader/instrument_keys.hpp"

namespace tidewright::config {
namespace {

using enum Need;
using K = Kind;

// part, name, kind, need, example, standard, low, high, help
constexpr std::array section_rows{
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

    Key{Part::hub, "discovery", K::yes_no, optional, "true", "true", "", "",
        "Publishes what a hub of the household needs to show the room by itself. false takes it "
        "back."},
    Key{Part::hub, "prefix", K::topic, optional, "homeassistant", "homeassistant", "", "",
        "First part of the topics on which that hub looks for devices."},
    Key{Part::hub, "homie", K::yes_no, optional, "true", "false", "", "",
        "Publishes the room by the Homie convention, version 5, too."},
    Key{Part::panel, "address", K::text, optional, "127.0.0.1", "127.0.0.1", "", "",
        "Where the panel listens: this machine alone, or an address of its own in the house's "
        "network, or 0.0.0.0 for all of them."},
    Key{Part::panel, "port", K::count, optional, "8321", "8321", "0", "65535",
        "The panel's port; 0: any that is free, which the log names."},
    Key{Part::panel, "names", K::words, optional, "water.home", "", "", "",
        "Host names by which browsers may call the panel, besides localhost and addresses in "
        "numbers. Others are refused."},
    Key{Part::panel, "token_file", K::text, optional, "/etc/tidewright/panel-token", "", "", "",
        "A file that holds a token of 16 to 128 characters and nothing else: whoever gives it may "
        "ask and tell over the panel. It is read at start. If not given, the panel can only be "
        "looked at."},
    Key{Part::panel, "units", K::choice, optional, "metric | US", "metric", "", "",
        "Litres and degrees Celsius, or US gallons and degrees Fahrenheit."},
    Key{Part::panel, "clock", K::choice, optional, "24 h | 12 h", "24 h", "", "",
        "How the panel writes the time of day."},
    Key{Part::panel, "language", K::choice, optional, "English | Deutsch", "English", "", "",
        "The panel's language. The sentences of alarms and reasons are English in both."},
    Key{Part::panel, "vat_outline", K::choice, optional, "drum | cone | box", "drum", "", "",
        "How the panel draws the vat."},

    Key{Part::alerts, "do_not_disturb", K::hours, optional, "22:00-07:00", "", "", "",
        "Between these times of day only urgent alarms are sent; the rest waits for their end."},
    Key{Part::webhook, "url", K::text, required, "https://phone.home/alerts", "", "", "",
        "Where each announcement is posted, as JSON."},
    Key{Part::webhook, "secret_file", K::text, optional, "/etc/tidewright/webhook", "", "", "",
        "A file that holds the secret by which the receiver knows that it comes from here: "
        "\"whsec_\" and base64, as the Standard Webhooks have it. If not given: not signed."},
    Key{Part::webhook, "ca_file", K::text, optional, "/etc/tidewright/ca.pem", "", "", "",
        "Certificate of the authority that signed the receiver's certificate. If not given: the "
        "authorities that this machine trusts."},
    Key{Part::webhook, "alarms", K::choice, optional, "all | soon | urgent", "all", "", "",
        "Which are posted: all, those that need somebody within a day, or urgent ones only."},
    Key{Part::mail, "server", K::text, required, "smtps://mail.home", "", "", "",
        "Where mail is handed in: smtps:// or, with STARTTLS, smtp://. Never without encryption."},
    Key{Part::mail, "username", K::text, optional, "waterroom", "", "", "",
        "The name by which the mail server knows the daemon."},
    Key{Part::mail, "password_file", K::text, optional, "/etc/tidewright/mail", "", "", "",
        "A file that holds the password and nothing else. It is read when mail is sent."},
    Key{Part::mail, "from", K::text, required, "waterroom@home.example", "", "", "",
        "The sender's address."},
    Key{Part::mail, "to", K::words, required, "ann@home.example", "", "", "",
        "The address, or the list of addresses, to which mail goes."},
    Key{Part::mail, "ca_file", K::text, optional, "/etc/tidewright/ca.pem", "", "", "",
        "Certificate of the authority that signed the mail server's certificate."},
    Key{Part::mail, "alarms", K::choice, optional, "all | soon | urgent", "all", "", "",
        "Which are mailed: all, those that need somebody within a day, or urgent ones only."},

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
    Key{Part::vat, "clean_every", K::time, optional, "180 days", "", "7 days", "1000 days",
        "So long after the last cleaning you are told. If not given: never."},
    Key{Part::vat, "water_age_longest", K::time, optional, "30 days", "", "1 day", "365 days",
        "When its water is older than this in the mean you are told. If not given: never."},
    Key{Part::vat, "level", K::level_gauge, optional, "", "", "", "", "The vat's level gauge."},
    Key{Part::vat, "full", K::float_switch, optional, "", "", "", "",
        "A float switch that says: full."},
    Key{Part::vat, "high_high", K::float_switch, optional, "", "", "", "",
        "A float switch above every other mark, which only an overfilled vat reaches."},

    Key{Part::mixing_vat, "volume", K::volume, required, "100 L", "", "1 L", "20000 L",
        "What the mixing vat holds when it is full to the brim."},
    Key{Part::mixing_vat, "low", K::level, optional, "20 %", "", "", "",
        "Below this neither its heater nor its pump runs."},
    Key{Part::mixing_vat, "stop_at", K::level, optional, "90 %", "", "", "",
        "Here every transfer into it ends."},
    Key{Part::mixing_vat, "level", K::level_gauge, optional, "", "", "", "",
        "The mixing vat's level gauge."},
    Key{Part::mixing_vat, "temperature", K::thermometer, optional, "", "", "", "",
        "The thermometer in the mixing vat."},

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
    Key{Part::purifier, "feed_flow", K::flow_meter, optional, "", "", "", "",
        "Water meter before the membrane. Its unit says whether it shows a flow or counts litres."},
    Key{Part::purifier, "product_flow", K::flow_meter, optional, "", "", "", "",
        "Water meter after the resin."},
    Key{Part::purifier, "concentrate_flow", K::flow_meter, optional, "", "", "", "",
        "Water meter in the concentrate."},
    Key{Part::purifier, "feed_pressure", K::pressure_meter, optional, "", "", "", "",
        "Pressure before the booster pump."},
    Key{Part::purifier, "feed_pressure_low", K::pressure, optional, "0.3 bar", "0.3 bar", "0 bar",
        "5 bar", "With less before it the pump runs dry and is stopped."},
    Key{Part::purifier, "concentrate_full", K::float_switch, optional, "", "", "", "",
        "A float switch that says: the vat that takes the concentrate is full."},
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
        "In a colder room nothing starts, and you are told."},
    Key{Part::purifier, "hot_above", K::temperature, optional, "35 °C", "35 °C", "20 °C", "60 °C",
        "In a hotter room, or with hotter feed water, you are told."},
    Key{Part::purifier, "rejection_low", K::share, optional, "90 %", "90 %", "50 %", "99 %",
        "When the membrane holds back less than this of the feed's solids you are told."},
    Key{Part::purifier, "feed_change", K::share, optional, "30 %", "30 %", "5 %", "100 %",
        "When the feed's solids are so far from the usual you are told."},
    Key{Part::purifier, "resin", K::volume, optional, "1.5 L", "", "0.1 L", "200 L",
        "Mixed resin in the first canister, to forecast its end."},
    Key{Part::purifier, "carbon_dioxide_ppm", K::solids, optional, "5 ppm", "5 ppm", "0 ppm",
        "200 ppm",
        "Carbon dioxide in the feed, in mg/L: it passes the membrane and uses the resin up. Tap "
        "water often has 2 to 20."},
    Key{Part::purifier, "resin_told_before", K::time, optional, "14 days", "14 days", "1 day",
        "90 days", "So long before the first canister's forecast end you are told."},

    Key{Part::temperature, "of", K::choice, optional, "room | feed water", "room", "", "",
        "What it measures. The room's is also watched for frost."},

    Key{Part::actuator, "role", K::choice, optional,
        "booster pump | feed valve | fill valve | transfer pump | mixing pump | heater | divert "
        "valve | flush valve",
        "booster pump", "", "",
        "What it drives. Booster pump, feed valve and fill valve go with the fill; the others a "
        "person starts, for so many minutes."},
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
        "How long after the last ON it goes off by itself. It must agree with what is set there. "
        "If not given: 30 s for a feed, fill or flush valve, which lets water through at line "
        "rate."},
    Key{Part::actuator, "automation", K::text, optional, "booster off after 2 minutes", "", "", "",
        "Name of the hub's automation that keeps the lease."},
    Key{Part::actuator, "flow", K::flow, optional, "600 L/h", "", "1 L/h", "20000 L/h",
        "The most water that it moves or lets through, to tell how many litres are at stake."},
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

    Key{Part::supply, "words", K::text, optional, "sea salt", "", "", "",
        "What it is called in messages. If not given: its name here."},
    Key{Part::supply, "unit", K::text, required, "kg", "", "", "",
        "In what it is counted, in your words."},
    Key{Part::supply, "order_below", K::number, required, "10", "", "0", "1000000",
        "With less than this in the house you are told to order."},
    Key{Part::supply, "used_in_30_days", K::number, optional, "4.5", "0", "0", "1000000",
        "What is used of it in 30 days."},
    Key{Part::supply, "used_per_1000_l", K::number, optional, "0.5", "0", "0", "1000000",
        "What is used of it for 1000 L of pure water, besides."},

    Key{Part::rule, "on_delay", K::time, optional, "10 s", "", "0 s", "24 h",
        "How long the cause must last before it counts."},
    Key{Part::rule, "off_delay", K::time, optional, "10 min", "", "0 s", "24 h",
        "How long the cause must be gone before it is over."},
    Key{Part::rule, "in_service", K::yes_no, optional, "false", "", "", "",
        "If false it is never announced; what it switches off is switched off all the same."},
};

constexpr auto all_rows() {
  std::array<Key, section_rows.size() + instrument_key_rows.size()> all;
  std::copy(instrument_key_rows.begin(), instrument_key_rows.end(),
            std::copy(section_rows.begin(), section_rows.end(), all.begin()));
  return all;
}
constexpr auto rows = all_rows();

}  // namespace

std::span<const Key> keys() { return rows; }

}  // namespace tidewright::config
