// A Homie 5 controller by the book, written from the specification (homieiot.github.io, version
// 5.0.0) and not from our code: it hears everything of one device and complains.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "tests/support/mqtt_client.hpp"

namespace tidewright::support {

struct HomieProperty {
  std::string datatype, format, unit;
  bool settable = false, retained = true;
};

class HomieController {
 public:
  // Every message, in the order in which it came.
  void hear(const Message&);

  const std::vector<std::string>& problems() const { return problems_; }
  const std::string& state() const { return state_; }
  const std::string& device() const { return device_; }  // `homie/5/<id>`
  // `<node>/<property>`.
  const std::map<std::string, HomieProperty>& properties() const { return properties_; }
  std::string value(const std::string& property) const;
  const std::map<std::string, std::string>& alerts() const { return alerts_; }
  // Each state since the beginning, and `description` where one came.
  const std::vector<std::string>& story() const { return story_; }

 private:
  void take_state(const std::string& payload);
  void take_description(const std::string& payload);
  void take_value(const std::string& property, const Message&);
  void complain(const std::string& what) { problems_.push_back(what); }

  std::string device_, state_, description_;
  long long version_ = -1;
  std::map<std::string, HomieProperty> properties_;
  std::map<std::string, std::string> values_, alerts_;
  std::vector<std::string> story_, problems_;
};

}  // namespace tidewright::support
