// The largest words of the page: may the water be used, and if not, what it waits for. An alarm
// takes their place.
#include <fmt/format.h>

#include "daemon/panel/html.hpp"
#include "daemon/panel/view.hpp"

namespace tidewright::panel {
namespace {

std::string headline(const std::string& text) { return element("h1", "", escaped(text)); }
std::string line(const std::string& html) { return element("p", "", html); }

// What is urgent, and what is to be done within a day and nobody has seen yet.
bool takes_the_place(const Standing& alarm) {
  return alarm.priority == 1 || (alarm.priority == 2 && !alarm.acknowledged);
}

std::string step(const Style& style, Word name, const std::string& text) {
  if (text.empty()) return {};
  return element("dt", "", style.word(name)) + element("dd", "", style.sentence(text));
}

std::string alarm_in_full(const View& view, const Standing& alarm) {
  const Style& style = view.style;
  const std::string since = style.said(Word::alarm_since, style.time(alarm.since, view.now));
  std::string html = element("h1", "", style.of_core(alarm.title) + " " + escaped(since) + ".");
  html += line(style.sentence(alarm.text.happened));
  html += element("dl", "",
                  step(style, Word::do_now, alarm.text.action) +
                      step(style, Word::by_when, alarm.text.by_when) +
                      step(style, Word::did, alarm.text.did));
  return html;
}

// The others, each in a line.
std::string others(const View& view, const std::vector<const Standing*>& alarms) {
  if (alarms.empty()) return {};
  std::string items;
  for (const Standing* alarm : alarms) {
    items += element("li", "",
                     element("strong", "", view.style.of_core(alarm->title)) + ": " +
                         view.style.sentence(alarm->text.happened) + " " +
                         view.style.sentence(alarm->text.action));
  }
  return element("ul", " class=\"others\"", items);
}

// What the vat does now, and why.
std::string doing(const View& view, const Facts& vat) {
  const Style& style = view.style;
  const std::string state = vat.text("state");
  std::string why = style.sentence(vat.text("why"));
  if (state == "filling") {
    const std::string full = vat.text("full_at");
    if (full.empty()) return escaped(style.word(Word::filling));
    return escaped(style.said(Word::filling_until, style.time(full, view.now)));
  }
  if (state == "paused") return escaped(style.word(Word::paused)) + " " + why;
  if (state == "held") return escaped(style.word(Word::held)) + " " + why;
  if (state == "full") return escaped(style.word(Word::at_mark));
  const auto& start = view.household.room.vat->start_below;
  if (!start) return why;
  return escaped(style.said(Word::resting, style.litres(start->value)));
}

std::string purity(const View& view, const Facts& vat) {
  const std::string word = vat.text("purity");
  std::string why = view.style.sentence(vat.text("purity_why"));
  if (word == "pure") return escaped(view.style.word(Word::pure)) + " " + why;
  if (word == "not pure") return why;
  return escaped(view.style.word(Word::purity_not_known)) + " " + why;
}

std::string readiness(const View& view, const Facts& vat) {
  const Style& style = view.style;
  const room::Vat& room_vat = *view.household.room.vat;
  const auto litres = vat.number("volume_l");
  if (vat.flag("ready") == true) {
    return litres ? style.said(Word::ready, style.litres(*litres), room_vat.holds)
                  : style.said(Word::ready_by_float, room_vat.holds);
  }
  if (vat.text("purity") == "not pure") return std::string(style.word(Word::not_pure));
  if (!litres) {
    const bool gauge =
        room::find(view.household.room, room::Quantity::level, room::Place::vat).has_value();
    return std::string(style.word(gauge ? Word::level_not_known : Word::not_yet_float));
  }
  const std::string missing = style.litres(room_vat.enough.value - *litres);
  const auto at = local_time(vat.text("ready_at")), now = local_time(view.now);
  if (!at || !now) return style.said(Word::not_yet, missing);
  const auto wait = std::chrono::round<std::chrono::minutes>(*at - *now);
  return style.said(Word::not_yet_about, missing, style.lasting(wait));
}

std::string of_vat(const View& view) {
  const Facts vat(view.report, "vat");
  std::string html = headline(readiness(view, vat)) + line(purity(view, vat));
  if (!vat.knows("volume_l") && vat.flag("ready") != true) {
    html += line(view.style.sentence(vat.why("volume_l")));
  }
  return html + line(doing(view, vat));
}

// A room without a vat is about its floor.
std::string of_floor(const View& view) {
  bool any = false, known = true;
  std::string why;
  for (const room::Instrument& instrument : view.household.room.instruments) {
    if (instrument.quantity != room::Quantity::wetness) continue;
    const Facts source(view.report, "source", instrument.id);
    any = true;
    if (source.text("quality") == "good") continue;
    known = false;
    why = source.text("why");
  }
  if (!any) return headline(std::string(view.style.word(Word::nothing_watched)));
  return headline(std::string(view.style.word(known ? Word::all_dry : Word::floor_not_known))) +
         (why.empty() ? "" : line(view.style.sentence(why)));
}

// How many instruments have ever said something readable.
std::size_t reported(const report::Report& report) {
  std::size_t count = 0;
  for (const report::Thing& thing : report.things) {
    if (thing.kind == "source" && Facts(&thing).knows("received")) ++count;
  }
  return count;
}

std::string of_a_first_start(const View& view, std::size_t count) {
  const std::size_t all = view.household.room.instruments.size();
  return headline(std::string(view.style.word(Word::first_reading))) +
         line(escaped(
             view.style.said(Word::reported_so_far, std::to_string(count), std::to_string(all))));
}

}  // namespace

std::string_view mood(const View& view) {
  for (const Standing& alarm : view.alarms) {
    if (takes_the_place(alarm)) return alarm.priority == 1 ? "urgent" : "soon";
  }
  return Facts(view.report, "vat").flag("ready") == true ? "ready" : "waiting";
}

std::string sentence(const View& view) {
  std::vector<const Standing*> rest;
  std::string html;
  for (const Standing& alarm : view.alarms) {
    if (html.empty() && takes_the_place(alarm)) {
      html = alarm_in_full(view, alarm);
    } else if (alarm.priority < 3) {
      rest.push_back(&alarm);
    }
  }
  if (html.empty()) {
    const std::size_t heard = reported(view.report);
    if (heard == 0 && !view.household.room.instruments.empty()) {
      html = of_a_first_start(view, heard);
    } else {
      html = view.household.room.vat ? of_vat(view) : of_floor(view);
    }
  }
  return html + others(view, rest);
}

}  // namespace tidewright::panel
