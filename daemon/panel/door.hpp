// Who may come in: the panel believes no name that it was not told, so that a page from elsewhere
// cannot reach it through a name of its own (DNS rebinding), and takes nothing from another
// origin. A form must say where it comes from. Pure.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tidewright::panel {

struct Caller {
  std::string_view method;
  std::string_view host;    // the header, with a port perhaps
  std::string_view origin;  // the header; empty: there was none
  std::size_t target_size = 0;
  bool may_write = false;  // forms are taken at this path
};

struct Refused {
  int status = 0;  // 0: come in
  std::string why;
};

Refused refused(const Caller&, const std::vector<std::string>& names);

}  // namespace tidewright::panel
