// What a page is made of: a report, what stands in it, and how it is to be written.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "config/household.hpp"
#include "core/report/report.hpp"
#include "core/state/state.hpp"
#include "daemon/panel/facts.hpp"
#include "daemon/panel/style.hpp"

namespace tidewright::panel {

// An alarm that stands and is not hidden.
struct Standing {
  std::string id;
  std::string title;
  std::string since;  // ISO 8601
  int priority = 3;
  bool acknowledged = false;
  report::Standing text;
  std::uint32_t occurrence = 0;
  bool to_acknowledge = false;
  bool latched = false;
};

// The most urgent first; of those alike, the first that came.
std::vector<Standing> standing(const room::Room&, const State&, const report::Report&);

struct View {
  const config::Household& household;
  const report::Report& report;
  const std::vector<Standing>& alarms;
  const Style& style;
  std::string now;           // of the report, ISO 8601
  bool is_answered = false;  // who is let in may ask and tell over the panel
};

// The parts of the page, each as HTML. Where there is nothing to say a part is empty.
std::string sentence(const View&);  // what the person came to know, or the alarms
std::string vessel(const View&);
std::string path(const View&);
std::string running(const View&);
std::string due(const View&);
// What the first part is about, as the class of the page: urgent, soon, ready, waiting.
std::string_view mood(const View&);

}  // namespace tidewright::panel
