#include "daemon/hub/json_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

namespace tidewright::hub {

std::string as_json(std::string_view text) {
  return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

std::string as_json(const std::vector<std::string>& list) {
  std::string text = "[";
  for (const std::string& item : list) {
    if (text.size() > 1) text += ',';
    text += as_json(item);
  }
  return text + "]";
}

std::string decimal(double value, int decimals) {
  std::string text = fmt::format("{:.{}f}", value, decimals);
  const bool is_zero = text.find_first_not_of("-0.") == std::string::npos;
  if (is_zero && text.front() == '-') text.erase(0, 1);
  return text;
}

ObjectText& ObjectText::add(std::string_view name, std::string_view json) {
  if (text_.size() > 1) text_ += ',';
  text_ += as_json(name);
  text_ += ':';
  text_ += json;
  return *this;
}

}  // namespace tidewright::hub
