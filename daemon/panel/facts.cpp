#include "daemon/panel/facts.hpp"

namespace tidewright::panel {

Facts::Facts(const report::Report& report, std::string_view kind, std::string_view id) {
  for (const report::Thing& thing : report.things) {
    if (thing.kind == kind && (id.empty() || thing.id == id)) {
      thing_ = &thing;
      return;
    }
  }
}

const report::Value* Facts::find(std::string_view name) const {
  if (thing_ == nullptr) return nullptr;
  for (const report::Field& field : thing_->fields) {
    if (field.name == name) return &field.value;
  }
  return nullptr;
}

std::optional<double> Facts::number(std::string_view name) const {
  const report::Value* value = find(name);
  const auto* number = value != nullptr ? std::get_if<double>(value) : nullptr;
  return number != nullptr ? std::optional{*number} : std::nullopt;
}

std::string Facts::text(std::string_view name) const {
  const report::Value* value = find(name);
  const auto* text = value != nullptr ? std::get_if<std::string>(value) : nullptr;
  return text != nullptr ? *text : std::string{};
}

std::optional<bool> Facts::flag(std::string_view name) const {
  const report::Value* value = find(name);
  const bool* flag = value != nullptr ? std::get_if<bool>(value) : nullptr;
  return flag != nullptr ? std::optional{*flag} : std::nullopt;
}

std::vector<std::string> Facts::list(std::string_view name) const {
  const report::Value* value = find(name);
  const auto* list = value != nullptr ? std::get_if<std::vector<std::string>>(value) : nullptr;
  return list != nullptr ? *list : std::vector<std::string>{};
}

bool Facts::knows(std::string_view name) const {
  const report::Value* value = find(name);
  return value != nullptr && !std::holds_alternative<report::Unknown>(*value);
}

}  // namespace tidewright::panel
