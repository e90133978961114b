#include "daemon/panel/question.hpp"

#include <iterator>

#include "core/procedure/attended.hpp"
#include "core/report/phrases.hpp"
#include "daemon/hub/askable.hpp"
#include "daemon/hub/json_text.hpp"
#include "daemon/hub/request_kinds.hpp"

namespace tidewright::panel {
namespace {

using hub::Verb;

void add_water(const room::Room& room, std::vector<Question>& all) {
  if (!room::driving(room)) return;
  std::vector<int> lasting{30, 60, 120, 240};
  if (room::fills_to_a_mark(room)) lasting.insert(lasting.begin(), 0);
  all.push_back({.path = "start/make_water",
                 .verb = Verb::ask,
                 .what = "start",
                 .minutes = std::move(lasting),
                 .group = Word::water_group,
                 .name = Word::start_water,
                 .asks = Word::start_water_asks,
                 .help = Word::start_water_help,
                 .answer = Word::until_full});
  all.push_back({.path = "stop/make_water",
                 .verb = Verb::ask,
                 .what = "stop",
                 .minutes = {0, 60, 240, 720},
                 .group = Word::water_group,
                 .name = Word::stop_water,
                 .asks = Word::stop_water_asks,
                 .help = Word::stop_water_help,
                 .answer = Word::until_start});
}

// Those that do not go with the fill run for so long as a person says.
void add_actuators(const room::Room& room, std::vector<Question>& all) {
  for (std::size_t i = 0; i < room.actuators.size(); ++i) {
    const room::Actuator& actuator = room.actuators[i];
    if (room::facts(actuator.role).makes_water) continue;
    const std::string words = report::actuator_words(room, static_cast<room::ActuatorIndex>(i));
    all.push_back({.path = "start/" + actuator.id,
                   .verb = Verb::ask,
                   .what = "start",
                   .field = "what",
                   .id = actuator.id,
                   .about = words,
                   .minutes = {5, 15, 30, 60},
                   .group = Word::water_group,
                   .name = Word::start_this,
                   .asks = Word::start_this_asks,
                   .help = Word::start_this_help,
                   .answer = Word::start_this});
    all.push_back({.path = "stop/" + actuator.id,
                   .verb = Verb::ask,
                   .what = "stop",
                   .field = "what",
                   .id = actuator.id,
                   .about = words,
                   .group = Word::water_group,
                   .name = Word::stop_this,
                   .asks = Word::stop_this_asks,
                   .help = Word::stop_this_help,
                   .answer = Word::stop_this_answer});
  }
}

void add_done(const room::Room& room, std::vector<Question>& all) {
  const auto add = [&](std::string_view what, Word name, Word asks, Word help) {
    all.push_back({.path = std::string(what),
                   .verb = Verb::tell,
                   .what = what,
                   .group = Word::done_group,
                   .name = name,
                   .asks = asks,
                   .help = help,
                   .answer = Word::yes_tell});
  };
  if (room.purifier && room.purifier->lead_resin) {
    add("rotated", Word::was_rotated, Word::was_rotated_asks, Word::was_rotated_help);
    add("replaced", Word::was_replaced, Word::was_replaced_asks, Word::was_replaced_help);
  }
  if (room.vat) add("cleaned", Word::was_cleaned, Word::was_cleaned_asks, Word::was_cleaned_help);
}

Question of_instrument(const room::Room& room, room::InstrumentIndex i, std::string_view what) {
  const std::string& id = room.instruments[i].id;
  return {.path = std::string(what) + "/" + id,
          .verb = Verb::tell,
          .what = what,
          .field = "instrument",
          .id = id,
          .about = report::instrument_words(room, i)};
}

void add_instruments(const room::Room& room, std::vector<Question>& all) {
  std::vector<Question> measured;
  for (std::size_t n = 0; n < room.instruments.size(); ++n) {
    const auto i = static_cast<room::InstrumentIndex>(n);
    const room::Instrument& instrument = room.instruments[n];
    if (room::is_tried_by_hand(instrument)) {
      Question tested = of_instrument(room, i, "tested");
      tested.group = Word::done_group;
      tested.name = Word::was_tested;
      tested.asks = Word::was_tested_asks;
      tested.help = Word::was_tested_help;
      tested.answer = Word::yes_tell;
      all.push_back(std::move(tested));
    }
    if (!hub::can_be_measured(instrument.quantity)) continue;
    Question one = of_instrument(room, i, "measured");
    one.unit = report::unit(instrument.quantity);
    one.names_unit = true;
    one.group = Word::measured_group;
    one.name = Word::was_measured;
    one.asks = Word::was_measured_asks;
    one.help = Word::was_measured_help;
    one.answer = Word::tell_it;
    measured.push_back(std::move(one));
  }
  std::move(measured.begin(), measured.end(), std::back_inserter(all));
}

void add_supplies(const room::Room& room, std::vector<Question>& all) {
  for (std::size_t i = 0; i < room.supplies.size(); ++i) {
    const room::Supply& supply = room.supplies[i];
    all.push_back({.path = "stocked/" + supply.id,
                   .verb = Verb::tell,
                   .what = "stocked",
                   .field = "supply",
                   .id = supply.id,
                   .about = report::supply_words(room, static_cast<room::SupplyIndex>(i)),
                   .unit = supply.unit,
                   .group = Word::stocked_group,
                   .name = Word::was_counted,
                   .asks = Word::was_counted_asks,
                   .help = Word::was_counted_help,
                   .answer = Word::tell_it});
  }
}

}  // namespace

std::vector<Question> questions(const room::Room& room) {
  std::vector<Question> all;
  add_water(room, all);
  add_actuators(room, all);
  add_done(room, all);
  add_instruments(room, all);
  add_supplies(room, all);
  all.push_back({.path = "test",
                 .verb = Verb::ask,
                 .what = "test",
                 .group = Word::phone_group,
                 .name = Word::try_phone,
                 .asks = Word::try_phone_asks,
                 .help = Word::try_phone_help,
                 .answer = Word::try_phone_answer});
  return all;
}

std::vector<Question> answers_to(const std::string& alarm, const std::string& title) {
  std::vector<Question> all;
  const auto add = [&](std::string_view what, Word name) {
    all.push_back({.path = std::string(what) + "/" + alarm,
                   .verb = Verb::ask,
                   .what = what,
                   .field = "alarm",
                   .id = alarm,
                   .about = title,
                   .name = name,
                   .answer = name});
  };
  add("acknowledge", Word::have_seen);
  add("reset", Word::reset);
  add("confirm", Word::reset);
  return all;
}

hub::Letter letter(const Question& question, const Form& form, const std::string& who,
                   const Style& style) {
  hub::ObjectText request;
  request.add(hub::verb_name(question.verb), hub::as_json(question.what));
  request.add("who", hub::as_json(who));
  if (!question.field.empty()) request.add(question.field, hub::as_json(question.id));
  if (!question.unit.empty()) {
    const std::string typed = field(form, "value");
    request.add("value",
                number_in_json(question.names_unit ? style.metric(typed, question.unit) : typed));
    if (question.names_unit) request.add("unit", hub::as_json(question.unit));
  }
  // Of an alarm: which occurrence was seen, with which token it was armed.
  // Without its occurrence nothing is acknowledged: it might be another one.
  for (const std::string name : {"minutes", "occurrence", "token"}) {
    const std::string given = field(form, name);
    const bool needed = name == "occurrence" && question.what == "acknowledge";
    if (needed || !given.empty()) request.add(name, number_in_json(given));
  }
  return {
      .verb = question.verb, .payload = request.closed(), .response_topic = {}, .correlation = {}};
}

}  // namespace tidewright::panel
