#include "daemon/panel/html.hpp"

#include <fmt/format.h>

namespace tidewright::panel {

std::string escaped(std::string_view text) {
  std::string html;
  html.reserve(text.size());
  for (const char c : text) {
    switch (c) {
      case '&':
        html += "&amp;";
        break;
      case '<':
        html += "&lt;";
        break;
      case '>':
        html += "&gt;";
        break;
      case '"':
        html += "&quot;";
        break;
      case '\'':
        html += "&#39;";
        break;
      default:
        html += static_cast<unsigned char>(c) < 0x20 || c == 0x7f ? ' ' : c;
    }
  }
  return html;
}

std::string element(std::string_view name, std::string_view attributes, std::string_view inner) {
  return fmt::format("<{}{}>{}</{}>", name, attributes, inner, name);
}

}  // namespace tidewright::panel
