// Whole pages, and the parts of the one for the wall: the same words whether the server sends them
// at once or the script swaps them in. Pure.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "daemon/panel/view.hpp"

namespace tidewright::panel {

// A section of the page; its `html` is one line, `<section id=…>…</section>`.
struct Part {
  std::string id;
  std::string html;
  friend bool operator==(const Part&, const Part&) = default;
};
using Parts = std::vector<Part>;

// Of the wall's page, in the order in which they are read.
Parts parts(const View&);
// The same before the first report: a sentence that says so, and nothing else yet.
Parts parts_at_start(const Style&);
// "As of 14:05".
std::string as_of(const View&);

enum class Page : std::uint8_t { now, why, history, tell };

// What stands around a page.
struct Frame {
  Page page{};
  std::string as_of;
  bool live = false;         // the script keeps it up to date
  bool is_answered = false;  // there is a page to ask and tell
};

// A page around `main`, which is HTML. Without script the one for the wall is loaded anew once a
// minute.
std::string whole(const config::Panel&, const std::string& room, const Frame&,
                  const std::string& main);

}  // namespace tidewright::panel
