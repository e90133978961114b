// The household's file, understood: the room for core, and how its things are reached over MQTT.
// config/reader makes it, the daemon wires itself by it. Core never sees a topic.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/room/room.hpp"

namespace tidewright::config {

// How a payload is read.
enum class Form : std::uint8_t { number, word, json, senml };

// What the payload shows, and what it then means in the instrument's own unit.
struct CalibrationPoint {
  double shown = 0;
  double meant = 0;
};

struct AvailabilityTopic {
  std::string topic;
  std::string online = "online";
  std::string offline = "offline";
};

// Where one instrument's messages come from and how they become its quantity.
struct Source {
  std::string topic;
  Form form = Form::number;
  std::string pointer;  // RFC 6901 into a json payload; empty = the whole document
  std::string
      time_pointer;  // RFC 6901 to the source's own time (ISO 8601 or Unix seconds); may be empty
  std::string senml_name;  // of its record in a pack (RFC 8428); empty = the pack's only name
  double whole = 1;        // litres that a share of one stands for, of a level
  double scale = 1;        // own unit = shown * scale + offset
  double offset = 0;
  std::vector<CalibrationPoint>
      points;                         // instead: piecewise linear, `shown` rising, no extrapolation
  std::vector<std::string> on_words;  // wet, full, ON
  std::vector<std::string> off_words;  // dry, not full, OFF
  std::vector<std::string> unknown_words;
  std::optional<AvailabilityTopic> availability;
};

// How one actuator is commanded. "{seconds}" in `on` becomes the lease.
struct Outlet {
  std::string topic;
  std::string on = "ON";
  std::string off = "OFF";
  std::string automation;  // of the hub, that keeps the lease; for people
};

// A mark on the vat, named as its key is. From the lowest to the brim.
struct Mark {
  std::string name;
  Litres at;
};

struct Broker {
  std::string uri = "mqtt://127.0.0.1:1883";  // mqtt:// or mqtts://
  std::string username;
  std::string password_file;  // read at start; never the password itself
  std::string ca_file;
  std::string certificate_file;
  std::string key_file;
};

// How hubs find the room.
struct Hub {
  bool discovery = true;
  std::string prefix = "homeassistant";
  bool homie = false;
};

enum class Language : std::uint8_t { english, german };
enum class Outline : std::uint8_t { drum, cone, box };

// The page that the daemon serves. Without this section there is none.
struct Panel {
  std::string address = "127.0.0.1";
  std::uint16_t port = 8321;       // 0: any that is free
  std::vector<std::string> names;  // host names by which a browser may call it
  std::string token_file;          // read at start; without it the panel can only be looked at
  bool us_units = false;
  bool twelve_hours = false;
  Language language = Language::english;
  Outline outline = Outline::drum;
};

// Which announcements go one of the ways below: every one, those of alarms that need somebody
// within a day, or those of urgent ones. The test goes every way.
enum class Alarms : std::uint8_t { all, soon, urgent };

// Ways to people that need no hub. Each file is read when something is sent.
struct Webhook {
  std::string url;          // http:// or https://
  std::string secret_file;  // of what signs it; empty: not signed
  std::string ca_file;      // empty: the authorities that this machine trusts
  Alarms alarms = Alarms::all;
};

struct Mail {
  std::string server;  // smtps://host:465, or smtp://host:587, then with STARTTLS
  std::string username;
  std::string password_file;
  std::string from;
  std::vector<std::string> to;
  std::string ca_file;
  Alarms alarms = Alarms::all;
};

struct Alerts {
  std::optional<room::Hours> do_not_disturb;  // never holds back what is urgent
  std::optional<Webhook> webhook;
  std::optional<Mail> mail;
};

struct Household {
  room::Room room;
  std::vector<Source> sources;  // one for each of room.instruments, same order
  std::vector<Outlet> outlets;  // one for each of room.actuators, same order
  std::vector<Mark> marks;      // of room.vat, for check
  Broker broker;
  Hub hub;
  std::optional<Panel> panel;
  Alerts alerts;
  std::string base = "tidewright";                 // of everything published
  std::string heartbeat = "tidewright-heartbeat";  // own topic of the safety line
  Duration journal_kept = std::chrono::hours{14 * 24};
};

}  // namespace tidewright::config
