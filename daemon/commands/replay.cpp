#include "daemon/commands/replay.hpp"

#include <fmt/format.h>
#include <sysexits.h>

#include <CLI/CLI.hpp>
#include <array>
#include <fstream>
#include <iostream>
#include <iterator>
#include <memory>
#include <optional>
#include <ostream>
#include <string>

#include "config/reader/reader.hpp"
#include "core/report/report.hpp"
#include "daemon/commands/replay_words.hpp"
#include "daemon/store/journal_file.hpp"
#include "daemon/store/relive.hpp"

namespace tidewright::commands {
namespace {

namespace fs = std::filesystem;

bool is_database(const fs::path& file) {
  constexpr std::string_view magic = "SQLite format 3";
  std::array<char, magic.size()> begin{};
  std::ifstream in{file, std::ios::binary};
  in.read(begin.data(), begin.size());
  return std::string_view{begin.data(), begin.size()} == magic;
}

void for_each_line(const fs::path& journal, const std::function<void(const std::string&)>& take) {
  if (is_database(journal)) return store::JournalFile::for_each_line(journal, take);
  std::ifstream in{journal};
  for (std::string line; std::getline(in, line);) take(line);
}

// Prints the moments in which something was done, and not each renewal of the same command.
class Storyteller {
 public:
  Storyteller(std::ostream& out, bool every_command) : out_(out), every_command_(every_command) {}

  void see(const store::Moment& moment) {
    bool told = false;
    for (const Effect& effect : moment.effects) {
      if (!worth_telling(moment.event, effect)) continue;
      if (!told) tell_event(moment);
      told = true;
      out_ << "    " << words(moment.room, moment.state, effect) << '\n';
    }
  }

 private:
  bool worth_telling(const Event& event, const Effect& effect) {
    if (std::holds_alternative<Started>(event.what)) last_ = {};
    const auto* command = std::get_if<Command>(&effect);
    if (command == nullptr) return !std::holds_alternative<Persist>(effect);
    auto& last = last_[command->actuator];
    const bool renewed = last == command->on;
    last = command->on;
    return every_command_ || !renewed;
  }

  void tell_event(const store::Moment& moment) {
    out_ << report::wall_time(moment.event.at, moment.state.circumstances.wall) << "  "
         << words(moment.room, moment.event);
    if (!moment.raw.empty()) out_ << "  [" << moment.raw << ']';
    out_ << '\n';
  }

  std::ostream& out_;
  bool every_command_;
  std::array<std::optional<bool>, room::actuators_max> last_{};
};

void sum_up(const store::Relived& relived, std::ostream& out) {
  out << fmt::format("{} events lived through again", relived.events);
  if (relived.chapters > 0) {
    out << fmt::format("; {} of {} chapters ended exactly as recorded", relived.chapters_agreed,
                       relived.chapters);
  }
  if (relived.passed_over > 0) out << fmt::format("; {} lines passed over", relived.passed_over);
  out << ".\n";
}

// The household's file given by --config; none (and said) if it is not understood.
std::optional<room::Room> given_room(const fs::path& config, std::ostream& err) {
  std::ifstream in{config};
  const std::string text{std::istreambuf_iterator<char>{in}, {}};
  auto understood = config::read(text);
  for (const config::Problem& problem : understood.problems) {
    err << config::render(problem, config.string(), text);
  }
  if (!understood.household) return std::nullopt;
  return std::move(understood.household->room);
}

}  // namespace

int replay(const Replay& replay, std::ostream& out, std::ostream& err) {
  if (!fs::is_regular_file(replay.journal)) {
    err << fmt::format("{}: there is no such file\n", replay.journal.string());
    return EX_NOINPUT;
  }
  std::optional<room::Room> room;
  if (!replay.config.empty() && !(room = given_room(replay.config, err))) return EX_CONFIG;
  Storyteller storyteller{out, replay.every_command};
  store::Relive relive{std::move(room),
                       [&](const store::Moment& moment) { storyteller.see(moment); },
                       [&](const std::string& trouble) { err << trouble << '\n'; }};
  try {
    for_each_line(replay.journal, [&](const std::string& line) {
      if (replay.export_text) {
        out << line << '\n';
      } else {
        relive.line(line);
      }
    });
  } catch (const std::exception& error) {
    err << fmt::format("{}: {}\n", replay.journal.string(), error.what());
    return EX_DATAERR;
  }
  if (replay.export_text) return EX_OK;
  sum_up(relive.result(), out);
  return relive.result().events > 0 ? EX_OK : EX_DATAERR;
}

std::function<int()> prepare_replay(CLI::App& app) {
  const auto typed = std::make_shared<Replay>();
  app.add_option("JOURNAL", typed->journal, "journal.db, or its exported text")->required();
  app.add_option("--config", typed->config, "a household's file instead of the recorded one");
  app.add_flag("--every-command", typed->every_command, "also each renewal of an ON");
  app.add_flag("--export", typed->export_text, "the journal's lines as they are");
  return [typed] { return replay(*typed, std::cout, std::cerr); };
}

}  // namespace tidewright::commands
