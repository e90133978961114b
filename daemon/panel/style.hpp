// How figures, times and sentences are written on the panel: units, clock and language as the
// household chose them. Pure.
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

#include "config/household.hpp"
#include "daemon/panel/words.hpp"

namespace tidewright::panel {

// The report's ISO 8601 time as the household's clock shows it; none if the text is no time.
std::optional<std::chrono::sys_seconds> local_time(std::string_view iso);

class Style {
 public:
  explicit Style(const config::Panel& panel) : panel_(panel) {}

  config::Language language() const { return panel_.language; }
  config::Outline outline() const { return panel_.outline; }
  bool twelve_hours() const { return panel_.twelve_hours; }
  std::string_view word(Word which) const { return panel::word(panel_.language, which); }
  std::string said(Word which, const std::string& a, const std::string& b = {}) const {
    return panel::said(panel_.language, which, a, b);
  }

  // At most one decimal, none from 100 on.
  std::string number(double value) const;
  std::string litres(double value) const;           // "16.9 L", "4.5 gal"
  std::string litres_an_hour(double value) const;   // "12 L/h"
  std::string lasting(std::chrono::minutes) const;  // "3 h 20 min"
  // "14:05", "2:05 pm"; with the day, if it is another one than that of `now`.
  std::string time(std::string_view iso, std::string_view now) const;
  std::string time_of_day(std::chrono::sys_seconds local) const;
  std::string day(std::chrono::sys_seconds local) const;

  // A sentence of core's with a capital letter and a full stop, its litres, degrees, bars and times
  // of day written in this style. Safe HTML; in another language than English where core always
  // says the same, otherwise marked as English.
  std::string sentence(const std::string& english) const;
  // Core's words within a sentence of the panel's own, in the same way.
  std::string of_core(std::string_view english) const;
  // Own words with core's in them, as HTML.
  std::string phrase(Word which, std::string_view english) const;
  // sentence() as plain text.
  std::string rewritten(std::string_view english) const;
  // A figure of that unit, and the unit in which it is to be shown.
  struct Figure {
    double value;
    std::string unit;
  };
  Figure figure(double value, std::string_view unit) const;

  // What a person typed in that unit's place, in the unit itself; as it was if that is no number.
  std::string metric(const std::string& typed, std::string_view unit) const;

  // "The booster pump".
  static std::string capital(std::string text);

 private:
  config::Panel panel_;
};

}  // namespace tidewright::panel
