// What is switched from here: whether it runs, as it says itself, and why.
#include "core/report/report.hpp"
#include "daemon/panel/html.hpp"
#include "daemon/panel/view.hpp"

namespace tidewright::panel {
namespace {

struct Condition {
  std::string_view shape;
  Word word;
};

Condition condition(const Facts& actuator) {
  const auto confirmed = actuator.flag("confirmed");
  const bool commanded = actuator.flag("commanded") == true;
  if (!confirmed) return {"○", commanded ? Word::answers_not : Word::is_off};
  if (actuator.flag("override") == true) return {"▲", Word::by_hand};
  if (*confirmed) return commanded ? Condition{"▶", Word::runs} : Condition{"▲", Word::told_off};
  return commanded ? Condition{"▷", Word::told_on} : Condition{"■", Word::is_off};
}

std::string line(const View& view, const room::Actuator& actuator) {
  const Facts facts(view.report, "actuator", actuator.id);
  const Condition now = condition(facts);
  const std::string lang = view.style.language() == config::Language::english ? "" : " lang=\"en\"";
  return element("li", "",
                 element("span", " aria-hidden=\"true\" class=\"shape\"", now.shape) +
                     element("strong", "",
                             element("span", lang, escaped(Style::capital(actuator.words))) + ": " +
                                 escaped(view.style.word(now.word)) + ".") +
                     " " + view.style.sentence(facts.text("why")));
}

}  // namespace

std::string running(const View& view) {
  const auto& actuators = view.household.room.actuators;
  std::string html = element("h2", "", escaped(view.style.word(Word::running)));
  if (actuators.empty()) {
    return html + element("p", "", escaped(view.style.word(Word::nothing_switched)));
  }
  std::string items;
  for (const room::Actuator& actuator : actuators) items += line(view, actuator);
  return html + element("ul", "", items);
}

}  // namespace tidewright::panel
