// `tidewright replay JOURNAL`: lives a recorded night through again and says in plain words what
// was commanded, announced and answered, and why.
#pragma once

#include <filesystem>
#include <functional>
#include <iosfwd>

namespace CLI {
class App;
}

namespace tidewright::commands {

struct Replay {
  std::filesystem::path journal;  // journal.db (a copy, or of a running daemon), or exported text
  std::filesystem::path config;   // empty: the household's file as it stands in the journal
  bool every_command = false;     // also the renewals of an ON that stands
  bool export_text = false;       // print the journal's lines instead (docs/journal.md)
};

// Exit code: 0 done; 65 the journal holds nothing that can be lived through; 66 no such file;
// 78 the household's file given by `config` is not understood. What happened goes to `out`, what
// could not be read to `err`.
int replay(const Replay& replay, std::ostream& out, std::ostream& err);

std::function<int()> prepare_replay(CLI::App& app);

}  // namespace tidewright::commands
