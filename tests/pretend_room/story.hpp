// A story: what befalls the pretend room, what its people do, and what must come of it. It goes
// on line by line; a `wait` that is in vain ends it badly. The lines:
//   say WORDS                                     told to whoever watches
//   wait N s|min|h
//   wait until CONDITION, at most N s|min|h       in the room's time
//     ACTUATOR on | off · vat over | under N l · told NAME VALUE (as the daemon publishes it)
//   ask start | stop | reset ALARM | acknowledge ALARM
//   tell rotated | replaced
// and everything in core/rehearsal/happening.hpp.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/rehearsal/pretend_room.hpp"
#include "tests/pretend_room/wire.hpp"

namespace tidewright::pretend {

class Story {
 public:
  Story(std::string_view text, Instant begins);

  enum class Course { under_way, came_true, failed };
  // Goes on as far as it can at this moment. Throws std::runtime_error on a line that is none.
  Course go_on(rehearsal::PretendRoom&, const room::Room&, Wire&);

 private:
  // Whether the line is over and the next may come.
  bool play(const std::string& line, rehearsal::PretendRoom&, const room::Room&, Wire&);
  bool play_wait(const std::string& what, rehearsal::PretendRoom&, const room::Room&, Wire&);
  bool play_ask(const std::string& what, Wire&);
  void print(Instant now, const std::string& words) const;

  std::vector<std::string> lines_;
  std::size_t next_ = 0;
  Instant begins_;
  Instant line_since_;  // when the present line began
  bool asked_ = false;  // a reset waits for its token
  bool failed_ = false;
};

}  // namespace tidewright::pretend
