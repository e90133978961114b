// Who acts and speaks in a scenario: one line at a time is let happen on the stage, or checked.
//
// Before the curtain:
//   room minimal | full | attended | hours      vat holds N l        water N C
//   gauge steps N l
//   top-off N l/day                             clock H:MM  (the wall's, when the curtain rises)
//   warn of the resin N days before             clean every N days     age at most N days
// What happens (besides everything in core/rehearsal/happening.hpp):
//   daemon starts | starts unclean | stops | crashes
//   broker goes | returns | refuses ACTUATOR | takes all again      disk refuses | takes
//   INSTRUMENT says N | wet | dry | full | not full | nonsense [(retained)]
//   NAME asks start [N min] | asks stop | asks reset ALARM | confirms | acknowledges ALARM
//   NAME asks bypass CAUSE [for N min] | confirms bypass CAUSE | ends bypass CAUSE
//   NAME asks test_lease ACTUATOR
//   NAME shelves ALARM for N h | says rotated | replaced | cleaned | stocked SUPPLY N
//   NAME says tested INSTRUMENT
// What is expected; it may end in "within N s|min|h" and then has so much time to come true, or in
// "for N s|min|h" and then must stay true so long:
//   expect ACTUATOR on | off                     its last command
//   expect ACTUATOR really on | off              its relay
//   expect ACTUATOR lease kept                   in a test
//   expect ACTUATOR because WORDS                why it is as it is
//   expect announced ALARM raised | reminder | cleared, or digest digest
//   expect text WORDS                            in the announcement just expected
//   expect nothing announced                     since the last one expected
//   expect alarm ALARM STATE
//   expect done | refused WORDS                  the answer to the last ask
//   expect vat over | under N l                  true litres
//   expect floor under N l
#pragma once

#include <memory>
#include <string>

#include "tests/scenarios/script.hpp"
#include "tests/support/theatre.hpp"

namespace tidewright::scenarios {

class Cast {
 public:
  explicit Cast(const std::vector<Line>& setting);

  // Plays up to the line's time and then the line. Returns what went wrong, or nothing.
  // Throws std::runtime_error if the words are none of the above.
  std::string play(const Line&);
  // What was announced and nobody expected.
  std::string leftovers() const;

 private:
  bool act(const std::string& words);
  bool act_daemon(const std::string& words);
  bool act_person(const std::string& words);
  bool ask_of_protection(const std::string& words, Ask&) const;
  bool tell(const Name& who, const std::string& said);
  bool act_instrument(const std::string& words);
  std::string expect(std::string words);
  bool holds(const std::string& words);
  bool holds_announced(const std::string& words);
  bool holds_actuator(const std::string& words);
  void print_phone_text(const report::Message&) const;

  std::unique_ptr<support::Theatre> theatre_;
  report::Message last_;  // the announcement just expected
};

}  // namespace tidewright::scenarios
