// Looks values up in a report by their names. A name that is not there reads as nothing.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/report/report.hpp"

namespace tidewright::panel {

// One thing of a report, or none.
class Facts {
 public:
  explicit Facts(const report::Thing* thing) : thing_(thing) {}
  Facts(const report::Report& report, std::string_view kind, std::string_view id = {});

  explicit operator bool() const { return thing_ != nullptr; }
  std::optional<double> number(std::string_view name) const;
  // Empty if it is not known.
  std::string text(std::string_view name) const;
  std::optional<bool> flag(std::string_view name) const;
  std::vector<std::string> list(std::string_view name) const;
  // Why the value of that name is not known.
  std::string why(std::string_view name) const { return text(std::string(name) + "_why"); }
  // Whether there is such a value and it is known.
  bool knows(std::string_view name) const;

 private:
  const report::Value* find(std::string_view name) const;

  const report::Thing* thing_ = nullptr;
};

}  // namespace tidewright::panel
