// The pages to ask and tell: who one is, the list of questions, one question, and the buttons
// beside an alarm. Pure.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "daemon/panel/gate.hpp"
#include "daemon/panel/page.hpp"
#include "daemon/panel/question.hpp"

namespace tidewright::panel {

// Asks for name and token. `trouble`: what was wrong with those that were given; may be empty.
std::string way_in(const Style& style, std::string_view trouble);

// Everything that can be told and asked for. `beside`: the buttons of the alarms that stand.
std::string list_of_questions(const std::vector<Question>& all, const Visitor& visitor,
                              const std::string& answered, const std::string& beside,
                              const Style& style);

std::string question_page(const Question& question, const Visitor& visitor, const Style& style);

// What the visitor asked last and what came of it; with the button to confirm, while that can be
// done.
std::string what_came(const Answered& answered, const Visitor& visitor, bool can_be_confirmed,
                      const Style& style);
// What was asked, as HTML: the name of the question, and what was filled in.
std::string asked_in_words(const Question& question, const Form& form, const Style& style);

// Whether somebody has something to answer about it on the front page; others only on the list.
bool is_answered_at_once(const Standing& alarm);
// A mark that is another one as soon as other buttons should stand there.
std::string mark_of(const std::vector<Standing>& alarms);
// The section `answers` of who was let in. `source`: from where the script gets it anew.
std::string alarm_buttons(const std::vector<Standing>& alarms, const Visitor& visitor,
                          const std::string& answered, std::string_view source, const Style& style);

// The same for who is not let in: the way there, where an alarm is to be answered.
Part answers(const View& view);

}  // namespace tidewright::panel
