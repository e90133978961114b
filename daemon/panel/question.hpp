// What a person can ask and tell in this room over the panel, one question each. A question and
// what was filled in make the very request that MQTT would bring. Pure.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/room/room.hpp"
#include "daemon/hub/desk.hpp"
#include "daemon/panel/form.hpp"
#include "daemon/panel/style.hpp"

namespace tidewright::panel {

struct Question {
  std::string path;  // of its page, below /tell/: "measured/product_tds"
  hub::Verb verb{};
  std::string_view what;          // `measured`
  std::string_view field = {};    // that says what it is about, `instrument`; empty: nothing
  std::string id = {};            // and what stands in it
  std::string about = {};         // the same for people, in core's English: "the product meter"
  std::string unit = {};          // core's, of the number to be filled in; empty: none
  bool names_unit = false;        // in the request
  std::vector<int> minutes = {};  // to choose from; 0: no end is said. Empty: nothing to choose

  Word group{};   // under which it stands
  Word name{};    // of it in a list
  Word asks{};    // the question itself
  Word help{};    // what it means
  Word answer{};  // on the button; of minutes 0
};

// All of the room's, those of one group together.
std::vector<Question> questions(const room::Room& room);
// What alarms can be answered with: "acknowledge/leak", "reset/leak", "confirm/leak". The alarm is
// not looked up: the desk does that.
std::vector<Question> answers_to(const std::string& alarm, const std::string& title);

// The request by `who`, of what was filled in.
hub::Letter letter(const Question& question, const Form& form, const std::string& who,
                   const Style& style);

}  // namespace tidewright::panel
