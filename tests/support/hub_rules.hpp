// What the open hub accepts of a device message, written from the hub's own schema and not from our
// code: an unknown root key drops the whole device, a wrong key of a component drops that in
// silence, a wrong pair of unit and class spoils its history. Source of the tables: the hub's MQTT
// component and its list of sensor classes (home-assistant/core, mqtt/schemas.py and
// sensor/const.py, as of 2026), reduced to what a water room can need.
#pragma once

#include <map>
#include <string>
#include <vector>

namespace tidewright::support {

// One component as the hub understands it.
struct HubComponent {
  std::string platform;
  std::string unique_id;  // empty: it is taken back
  std::string state_topic;
  std::string command_topic;
  std::string device_class;
  std::string state_class;
  std::string payload_press;
  std::vector<std::string> options;
  std::vector<std::string> availability_topics;
};

struct HubDevice {
  std::map<std::string, HubComponent> components;
  std::vector<std::string> problems;  // one sentence each
};

// `topic` and `payload` of a device message.
HubDevice understood_by_hub(const std::string& topic, const std::string& payload);

// What is wrong with a value of that component; empty if nothing.
std::string wrong_state(const HubComponent&, const std::string& payload);

}  // namespace tidewright::support
