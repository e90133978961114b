#include "daemon/store/catch_up.hpp"

#include "daemon/store/line.hpp"
#include "daemon/store/relive.hpp"
#include "daemon/store/state_text.hpp"

namespace tidewright::store {

void catch_up(const JournalFile& journal, const StateFile& file, const room::Room& room,
              Kept& kept) {
  const auto lines = journal.lines_after(file.was_read() ? kept.sequence : 0);
  if (lines.empty()) return;
  // The household of then: its file may have changed since.
  Relive relive{{}, [](const Moment&) {}, [](const std::string&) {}};
  if (file.was_read()) {
    relive.line(print(kept.sequence, kept.at, HouseholdText{journal.newest_household()}));
    relive.line(print(kept.sequence, kept.at, StateText{.text = file.text(), .fresh = true}));
  }
  for (const std::string& line : lines) relive.line(line);
  if (relive.sequence() <= kept.sequence) return;
  State state;
  if (!from_text(room, to_text(relive.room(), relive.state()), state)) return;
  kept = {
      .sequence = relive.sequence(), .at = state.circumstances.now, .clean = false, .state = state};
}

}  // namespace tidewright::store
