#include "daemon/panel/history.hpp"

#include <fmt/format.h>

#include <array>
#include <stdexcept>
#include <vector>

#include "core/report/phrases.hpp"
#include "daemon/hub/request_kinds.hpp"
#include "daemon/panel/chart.hpp"
#include "daemon/panel/curve.hpp"
#include "daemon/panel/html.hpp"
#include "daemon/store/journal_file.hpp"
#include "daemon/store/line.hpp"

namespace tidewright::panel {
namespace {

struct Span {
  std::string_view name;
  Duration lasting;
  Word words;
};
constexpr std::array spans{
    Span{"24h", std::chrono::hours{24}, Word::hours_24},
    Span{"7d", std::chrono::hours{7 * 24}, Word::days_7},
    Span{"14d", std::chrono::hours{14 * 24}, Word::days_14},
};

// Those that show a number, the vat's gauge first.
std::vector<room::InstrumentIndex> shown(const room::Room& room) {
  std::vector<room::InstrumentIndex> all;
  for (std::size_t i = 0; i < room.instruments.size(); ++i) {
    const room::Instrument& instrument = room.instruments[i];
    if (report::unit(instrument.quantity).empty()) continue;
    const bool gauge =
        instrument.quantity == room::Quantity::level && instrument.place == room::Place::vat;
    all.insert(gauge ? all.begin() : all.end(), static_cast<room::InstrumentIndex>(i));
  }
  return all;
}

std::string_view name_of(TellKind kind) {
  for (const hub::RequestKind& row : hub::request_kinds(hub::Verb::tell)) {
    if (std::get<TellKind>(row.kind) == kind) return row.name;
  }
  return "?";
}

std::string link(const std::string& to, std::string_view text, bool here, std::string_view lang) {
  return element(
      "a", fmt::format(" href=\"{}\"{}{}", escaped(to), here ? " aria-current=\"true\"" : "", lang),
      escaped(text));
}

struct Chosen {
  room::InstrumentIndex instrument = 0;
  Span span = spans[0];
};

std::string choices(const room::Room& room, const std::vector<room::InstrumentIndex>& all,
                    const Chosen& chosen, const Style& style) {
  const auto to = [&](room::InstrumentIndex i, const Span& span) {
    return fmt::format("/history/{}/{}", room.instruments[i].id, span.name);
  };
  const std::string_view lang = style.language() == config::Language::english ? "" : " lang=\"en\"";
  std::string instruments, times;
  for (const room::InstrumentIndex i : all) {
    instruments += link(to(i, chosen.span), report::instrument_words(room, i).substr(4),
                        i == chosen.instrument, lang);
  }
  for (const Span& span : spans) {
    times += link(to(chosen.instrument, span), style.word(span.words),
                  span.name == chosen.span.name, "");
  }
  return element("p", " class=\"choices\"", times) +
         element("p", " class=\"choices\"", instruments);
}

}  // namespace

std::string History::page(const std::string& path, Instant now, const WallClock& wall,
                          const Style& style) const {
  const std::vector<room::InstrumentIndex> all = shown(room_);
  if (all.empty()) {
    return element("h1", "", escaped(style.said(Word::history_title, ""))) +
           element("p", "", escaped(style.word(Word::no_curves)));
  }
  bool known = path == "/history";
  Chosen chosen{all.front(), spans[0]};
  for (const room::InstrumentIndex i : all) {
    for (const Span& span : spans) {
      if (path != fmt::format("/history/{}/{}", room_.instruments[i].id, span.name)) continue;
      chosen = {i, span};
      known = true;
    }
  }
  if (!known) return {};
  const std::string lang = style.language() == config::Language::english ? "" : " lang=\"en\"";
  const std::string name = report::instrument_words(room_, chosen.instrument);
  return element("h1", "",
                 fmt::format(
                     "{}", style.said(Word::history_title, element("span", lang, escaped(name))))) +
         curve(chosen.instrument, chosen.span.lasting, now, wall, style) +
         choices(room_, all, chosen, style);
}

std::string History::curve(room::InstrumentIndex i, Duration span, Instant now,
                           const WallClock& wall, const Style& style) const {
  const room::Instrument& instrument = room_.instruments[i];
  Curve curve(now - span, now);
  const auto take = [&](const std::string& text) {
    store::Line line;
    if (store::parse(text, room_, line) != nullptr) return;
    const auto* event = std::get_if<Event>(&line.what);
    if (event == nullptr) return;
    if (const auto* reading = std::get_if<Reading>(&event->what)) {
      if (reading->instrument == i) curve.add(event->at, reading->value);
    } else if (const auto* tell = std::get_if<Tell>(&event->what)) {
      curve.add({event->at, std::string(name_of(tell->kind)), std::string(tell->who.view())});
    }
  };
  try {
    const std::lock_guard guard(reading_);
    store::JournalFile::for_each_line_since(
        journal_, now - span, {" reading instrument=" + instrument.id + " ", " tell tell="}, take);
  } catch (const std::exception&) {
    return element("p", "", escaped(style.word(Word::history_failed)));
  }
  return chart(curve, report::unit(instrument.quantity), wall, style);
}

}  // namespace tidewright::panel
