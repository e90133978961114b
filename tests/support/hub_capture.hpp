// A hub that hears everything from the first message on, and whose memory is long: what it was
// shown must stay what it was. Knows the rules (hub_rules) and none of our code.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "tests/support/hub_rules.hpp"
#include "tests/support/mqtt_client.hpp"

namespace tidewright::support {

class HubCapture {
 public:
  // `prefix`: where it looks for devices.
  explicit HubCapture(std::string prefix = "homeassistant") : prefix_(std::move(prefix)) {}

  // Every message, in the order in which it came.
  void hear(const Message&);
  // At the end: all that the broker retains. `kept_below`: where nothing may be retained that no
  // component and no present thing needs; `present`: the things that are there now
  // (`source/floor`).
  void compare_with_retained(const std::vector<Message>& retained, const std::string& kept_below,
                             const std::set<std::string>& present);

  const std::vector<std::string>& problems() const { return problems_; }
  // The components that it has now, by key.
  const std::map<std::string, HubComponent>& components() const { return components_; }
  int configs_heard() const { return configs_heard_; }
  // What a value's topic said last.
  std::string said(const std::string& topic) const;
  std::string told_of_all() const;  // the problems, one a line

 private:
  bool is_config(const std::string& topic) const;
  void take_config(const Message&);
  void take_state(const Message&);
  void complain(const std::string& what) { problems_.push_back(what); }

  std::string prefix_;
  std::string device_topic_;
  std::map<std::string, HubComponent> components_;
  std::map<std::string, std::string> unique_ids_;  // every key ever, and its id
  std::map<std::string, std::string> said_;
  std::map<std::string, double> totals_;  // by unique id
  std::vector<std::string> problems_;
  int configs_heard_ = 0;
};

}  // namespace tidewright::support
