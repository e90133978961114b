// Builds the fields of one thing. What is not known is null, with its reason beside it as
// `<name>_why`.
#pragma once

#include <optional>
#include <string>
#include <utility>

#include "core/report/report.hpp"

namespace tidewright::report {

class Fields {
 public:
  Fields(std::string kind, std::string id) : thing_{std::move(kind), std::move(id), {}} {}

  Fields& add(std::string name, Value value, int decimals = 1) {
    thing_.fields.push_back({std::move(name), std::move(value), decimals});
    return *this;
  }
  Fields& unknown(const std::string& name, std::string why) {
    return add(name, Unknown{}).add(name + "_why", std::move(why));
  }
  template <class T>
  Fields& add_if(const std::string& name, const std::optional<T>& value, std::string why,
                 int decimals = 1) {
    return value ? add(name, *value, decimals) : unknown(name, std::move(why));
  }
  Thing done() { return std::move(thing_); }

 private:
  Thing thing_;
};

}  // namespace tidewright::report
