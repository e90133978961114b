// What stands in daemon/panel/page, and the library that draws curves, built into the program by
// page/embed.cmake.
#pragma once

#include <span>
#include <string_view>

namespace tidewright::panel {

struct Asset {
  std::string_view path;  // "/panel.css"
  std::string_view type;
  std::string_view encoding;  // "gzip", or "" as it is
  std::string_view body;
};

std::span<const Asset> assets();

}  // namespace tidewright::panel
