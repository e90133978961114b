#include "daemon/panel/tell_page.hpp"

#include <fmt/format.h>

#include "daemon/panel/html.hpp"

namespace tidewright::panel {
namespace {

std::string hidden(std::string_view name, std::string_view value) {
  return fmt::format(R"(<input type="hidden" name="{}" value="{}">)", name, escaped(value));
}

// A form of one request; `inner` is what a person fills in, and the buttons.
std::string form(std::string_view path, const Visitor& visitor, const std::string& inner,
                 std::string_view attributes = {}) {
  return element("form",
                 fmt::format(R"( method="post" action="/tell/{}"{})", escaped(path), attributes),
                 hidden("form", visitor.form) + inner);
}

std::string button(const std::string& html, std::string_view attributes = {}) {
  return element("button", attributes, html);
}

std::string word(const Style& style, Word which) { return escaped(style.word(which)); }

// With script it is held for a second; without, a page asks once more.
std::string held_button(const Style& style, Word plain, Word held) {
  return button(element("span", " class=\"plain\"", word(style, plain)) +
                    element("span", " class=\"hold\"", word(style, held)),
                " data-hold");
}

std::string lasting(const Style& style, const Question& question, int minutes) {
  if (minutes == 0) return word(style, question.answer);
  return escaped(style.said(Word::for_so_long, style.lasting(std::chrono::minutes{minutes})));
}

std::string entry(const Question& question, const Style& style) {
  const std::string unit =
      question.names_unit ? style.figure(0, question.unit).unit : question.unit;
  return element("label", " for=\"value\"", word(style, Word::value)) +
         element(
             "p", " class=\"entry\"",
             R"(<input id="value" name="value" inputmode="decimal" autocomplete="off" required )"
             R"(pattern="\s*-?[0-9]+([.,][0-9]+)?\s*" aria-describedby="unit">)" +
                 element("span", " id=\"unit\"", escaped(unit)));
}

std::string labelled(const Style& style, std::string_view name, Word label,
                     std::string_view attributes) {
  return element("label", fmt::format(" for=\"{}\"", name), word(style, label)) +
         fmt::format(R"(<input id="{0}" name="{0}" required {1}>)", name, attributes);
}

std::string row(const Question& question, const Style& style) {
  return element("li", "",
                 element("a", fmt::format(" href=\"/tell/{}\"", escaped(question.path)),
                         element("span", "", style.phrase(question.name, question.about))));
}

std::string of_alarm(const Standing& alarm, const Visitor& visitor, const Style& style) {
  std::string forms;
  if (alarm.to_acknowledge) {
    forms += form("acknowledge/" + alarm.id, visitor,
                  hidden("occurrence", std::to_string(alarm.occurrence)) +
                      button(word(style, Word::have_seen)));
  }
  if (alarm.latched) {
    forms += form("reset/" + alarm.id, visitor,
                  held_button(style, Word::reset, Word::hold_to_reset), " data-then=\"confirm\"");
  }
  if (forms.empty()) return forms;
  std::string html =
      element("h2", "", style.of_core(alarm.title)) + element("div", " class=\"buttons\"", forms);
  if (alarm.latched) html += element("p", " class=\"caution\"", word(style, Word::reset_caution));
  return html;
}

}  // namespace

std::string way_in(const Style& style, std::string_view trouble) {
  std::string html =
      element("h1", "", word(style, Word::tell_page)) + element("p", "", word(style, Word::way_in));
  if (!trouble.empty()) {
    html +=
        element("p", " id=\"came\" class=\"refused\" role=\"alert\"",
                element("span", " aria-hidden=\"true\" class=\"shape\"", "▲") + escaped(trouble));
  }
  return html +
         element(
             "form", " method=\"post\" action=\"/tell/enter\"",
             labelled(style, "who", Word::your_name,
                      R"(maxlength="31" autocomplete="username" autocapitalize="off")") +
                 labelled(style, "token", Word::the_token,
                          R"(type="password" maxlength="128" autocomplete="current-password")") +
                 button(word(style, Word::enter)));
}

std::string list_of_questions(const std::vector<Question>& all, const Visitor& visitor,
                              const std::string& answered, const std::string& beside,
                              const Style& style) {
  std::string groups, rows;
  for (std::size_t i = 0; i < all.size(); ++i) {
    rows += row(all[i], style);
    if (i + 1 < all.size() && all[i + 1].group == all[i].group) continue;
    groups += element("section", "",
                      element("h2", "", word(style, all[i].group)) + element("ul", "", rows));
    rows.clear();
  }
  const std::string leave =
      form("leave", visitor,
           element("p", "", escaped(style.said(Word::let_in_as, visitor.who))) +
               button(word(style, Word::leave), " class=\"quiet\""),
           " class=\"leave\"");
  return element("h1", "", word(style, Word::tell_page)) + answered + beside +
         element("div", " class=\"groups\"", groups) + leave;
}

std::string question_page(const Question& question, const Visitor& visitor, const Style& style) {
  std::string inner;
  if (!question.unit.empty()) inner += entry(question, style);
  if (question.minutes.empty()) inner += button(style.phrase(question.answer, question.about));
  for (const int minutes : question.minutes) {
    const std::string choice =
        minutes == 0 ? "" : fmt::format(R"( name="minutes" value="{}")", minutes);
    inner += button(lasting(style, question, minutes), choice);
  }
  return element("h1", " class=\"asks\"", style.phrase(question.asks, question.about)) +
         element("p", " class=\"help\"", word(style, question.help)) +
         form(question.path, visitor, inner, question.minutes.empty() ? "" : " class=\"several\"") +
         element("p", "", element("a", " href=\"/tell\" class=\"back\"", word(style, Word::back)));
}

std::string asked_in_words(const Question& question, const Form& form, const Style& style) {
  std::string html = question.field == "alarm"
                         ? style.of_core(question.about) + ": " + word(style, question.name)
                         : style.phrase(question.name, question.about);
  if (!question.unit.empty()) {
    const std::string unit =
        question.names_unit ? style.figure(0, question.unit).unit : question.unit;
    html += ": " + escaped(field(form, "value")) + " " + escaped(unit);
  }
  const std::string minutes = field(form, "minutes");
  if (!minutes.empty()) html += ", " + escaped(style.said(Word::so_many_minutes, minutes));
  return html;
}

std::string what_came(const Answered& answered, const Visitor& visitor, bool can_be_confirmed,
                      const Style& style) {
  const auto& outcome = answered.outcome;
  const bool armed = outcome && outcome->token;
  const bool done = outcome && outcome->done;
  const Word verdict = !outcome ? Word::no_answer
                       : armed  ? Word::one_more_step
                       : done   ? Word::is_done
                                : Word::is_refused;
  const std::string_view shape = armed ? "▷" : done ? "●" : "▲";
  std::string html = element("span", " aria-hidden=\"true\" class=\"shape\"", shape) +
                     element("strong", "", word(style, verdict)) + " " + answered.about + ".";
  if (armed) {
    html += " " + word(style, Word::confirm_within);
  } else if (!outcome) {
    html += " " + word(style, Word::look_first);
  } else if (outcome->why != "done") {
    html += " " + style.sentence(outcome->why);
  }
  // The page begins with it, also for who hears the page.
  std::string shown = element(
      "p",
      fmt::format(R"( id="came" class="{}" tabindex="-1" autofocus)", done ? "done" : "refused"),
      html);
  if (armed && can_be_confirmed) {
    const std::string alarm = answered.path.substr(answered.path.find('/') + 1);
    shown += form("confirm/" + alarm, visitor,
                  hidden("token", std::to_string(*outcome->token)) +
                      held_button(style, Word::confirm_reset, Word::hold_to_confirm),
                  " class=\"confirm\"");
  }
  return shown;
}

bool is_answered_at_once(const Standing& alarm) { return alarm.priority < 3 || alarm.latched; }

std::string mark_of(const std::vector<Standing>& alarms) {
  std::string mark;
  for (const Standing& alarm : alarms) {
    if (!alarm.to_acknowledge && !alarm.latched) continue;
    mark += fmt::format("{}{}-{}{}{}", mark.empty() ? "" : " ", alarm.id, alarm.occurrence,
                        alarm.to_acknowledge ? "a" : "", alarm.latched ? "r" : "");
  }
  return mark;
}

std::string alarm_buttons(const std::vector<Standing>& alarms, const Visitor& visitor,
                          const std::string& answered, std::string_view source,
                          const Style& style) {
  std::string html = answered;
  for (const Standing& alarm : alarms) html += of_alarm(alarm, visitor, style);
  return element("section",
                 fmt::format(R"( id="answers" data-own="{}" data-mark="{}"{})", source,
                             mark_of(alarms), html.empty() ? " hidden" : ""),
                 html);
}

Part answers(const View& view) {
  std::vector<Standing> asking;
  for (const Standing& alarm : view.alarms) {
    const bool any = alarm.to_acknowledge || alarm.latched;
    if (view.is_answered && any) asking.push_back(alarm);
  }
  std::string html;
  for (const Standing& alarm : asking) {
    if (!is_answered_at_once(alarm)) continue;
    html = element(
        "p", "",
        element("a", " class=\"button\" href=\"/tell\"", word(view.style, Word::answer_it)));
  }
  return {"answers", element("section",
                             fmt::format(R"( id="answers" data-mark="{}"{})", mark_of(asking),
                                         html.empty() ? " hidden" : ""),
                             html)};
}

}  // namespace tidewright::panel
