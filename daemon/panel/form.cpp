#include "daemon/panel/form.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>

#include "daemon/hub/json_text.hpp"

namespace tidewright::panel {

std::string field(const Form& form, const std::string& name) {
  const auto found = form.find(name);
  return found == form.end() ? std::string{} : found->second;
}

std::string cookie(std::string_view header, std::string_view name) {
  while (!header.empty()) {
    const std::size_t end = std::min(header.find(';'), header.size());
    std::string_view pair = header.substr(0, end);
    while (pair.starts_with(' ')) pair.remove_prefix(1);
    if (pair.size() > name.size() && pair.starts_with(name) && pair[name.size()] == '=') {
      return std::string(pair.substr(name.size() + 1));
    }
    header.remove_prefix(std::min(end + 1, header.size()));
  }
  return {};
}

std::string number_in_json(std::string_view typed) {
  std::string text(typed);
  text.erase(0, std::min(text.find_first_not_of(' '), text.size()));
  text.erase(text.find_last_not_of(' ') + 1);
  std::replace(text.begin(), text.end(), ',', '.');
  double value = 0;
  const char* end = text.data() + text.size();
  const auto read = std::from_chars(text.data(), end, value, std::chars_format::fixed);
  const bool is_number = read.ec == std::errc{} && read.ptr == end && std::isfinite(value);
  return is_number ? fmt::format("{}", value) : hub::as_json(typed);
}

}  // namespace tidewright::panel
