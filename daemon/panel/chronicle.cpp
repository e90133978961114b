#include "daemon/panel/chronicle.hpp"

#include "core/report/report.hpp"
#include "core/rules/catalogue.hpp"
#include "daemon/panel/html.hpp"

namespace tidewright::panel {

void Chronicle::add(const State& state, Kind kind, std::string what, std::string why) {
  const std::lock_guard guard(lock_);
  entries_.push_front({report::wall_time(state.circumstances.now, state.circumstances.wall), kind,
                       std::move(what), std::move(why)});
  if (entries_.size() > entries_most) entries_.pop_back();
}

void Chronicle::see(const room::Room& room, const State& state) {
  if (!begun_) add(state, Kind::started, {}, {});
  for (std::size_t i = 0; i < room.actuators.size(); ++i) {
    const state::Drive& drive = state.drives[i];
    if (drive.on == before_.drives[i].on) continue;
    add(state, drive.on ? Kind::on : Kind::off, Style::capital(room.actuators[i].words),
        report::words(room, drive.why));
  }
  for (const rules::Rule* rule : rules::catalogue) {
    const state::Alarm& now = state.alarms[rule->id];
    const state::Alarm& then = before_.alarms[rule->id];
    // What stood before the start is no news, but it is why things are as they are.
    const bool came = now.active && (!then.active || now.occurrence != then.occurrence);
    if (came) {
      add(state, Kind::alarm, std::string(rule->title), report::words(room, now.why));
    } else if (then.active && !now.active) {
      add(state, Kind::over, std::string(rule->title), {});
    }
  }
  before_ = state;
  begun_ = true;
  const std::lock_guard guard(lock_);
  now_ = report::wall_time(state.circumstances.now, state.circumstances.wall);
}

std::string Chronicle::written(const Entry& entry, const Style& style, const std::string& now) {
  const auto in_bold = [&](const std::string& text) {
    return element("strong", "", style.of_core(text));
  };
  const auto word = [&](Word which) { return escaped(style.word(which)); };
  std::string text;
  switch (entry.kind) {
    case Kind::started:
      text = word(Word::started);
      break;
    case Kind::on:
      text = in_bold(entry.what) + " " + word(Word::goes_on) + ". " + style.sentence(entry.why);
      break;
    case Kind::off:
      text = in_bold(entry.what) + " " + word(Word::goes_off) + ". " + style.sentence(entry.why);
      break;
    case Kind::alarm:
      text =
          word(Word::alarm_raised) + ": " + in_bold(entry.what) + ". " + style.sentence(entry.why);
      break;
    case Kind::over:
      text = in_bold(entry.what) + ": " + word(Word::alarm_over) + ".";
      break;
  }
  return element("li", "",
                 element("time", " datetime=\"" + escaped(entry.at) + "\"",
                         escaped(style.time(entry.at, now))) +
                     " " + element("span", "", text));
}

std::string Chronicle::story(const Style& style) const {
  const std::lock_guard guard(lock_);
  std::string html = element("h1", "", escaped(style.word(Word::why_title)));
  if (entries_.empty()) return html + element("p", "", escaped(style.word(Word::why_empty)));
  std::string items;
  for (const Entry& entry : entries_) items += written(entry, style, now_);
  return html + element("ol", " class=\"story\"", items);
}

}  // namespace tidewright::panel
