// The fields of one request: read one by one, each checked; the first thing that is wrong is kept
// as the refusal. A field that is missing reads as nothing: the caller has checked what is needed.
// Called by daemon/hub/request only.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "config/household.hpp"
#include "core/event.hpp"

namespace tidewright::hub {

using Names = std::vector<std::string_view>;

// What the person meant, if it can be guessed: ` Did you mean "leak"?`
std::string guess(std::string_view written, const Names& known);

class Fields {
 public:
  // Both outlive it.
  Fields(const nlohmann::json& object, const config::Household& household)
      : object_(object), household_(household) {}

  const std::optional<std::string>& refusal() const { return refusal_; }
  void refuse(std::string why);
  bool has(std::string_view name) const;

  // 1 to `longest` bytes without control characters.
  std::string text(std::string_view name, std::size_t longest);
  double number(std::string_view name, double low, double high, std::string_view expectation);
  std::uint32_t whole_number(std::string_view name, double high);
  Duration minutes();
  // An alarm that this room has.
  room::RuleId alarm();
  room::InstrumentIndex instrument();
  room::ActuatorIndex actuator();
  // A cause of the matrix.
  room::CauseId cause();
  room::SupplyIndex supply();
  // The actuator that a start or stop is about; no_subject: making water.
  room::ActuatorIndex what();
  // A hand measurement, in the instrument's own unit. A level must say its unit: a bare 45 may be
  // litres or per cent.
  double measured(room::InstrumentIndex index);
  // What there is of a supply, in its own unit.
  double in_stock();

 private:
  void expected(std::string_view name, std::string_view expectation);

  const nlohmann::json& object_;
  const config::Household& household_;
  std::optional<std::string> refusal_;
};

}  // namespace tidewright::hub
