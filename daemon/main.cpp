// The program: finds the command that was typed and runs it.
#include <sysexits.h>

#include <CLI/CLI.hpp>
#include <functional>
#include <iostream>

#include "daemon/commands/table.hpp"

namespace {

int run(int argc, char** argv) {
  CLI::App program("Looks after a home water room: makes water, stops it, raises the alarm.",
                   "tidewright");
  program.require_subcommand(1);
  program.set_version_flag("--version", TIDEWRIGHT_VERSION);
  std::function<int()> chosen;
  for (const tidewright::commands::Row& row : tidewright::commands::table()) {
    CLI::App* command = program.add_subcommand(row.name, row.summary);
    command->footer(std::string("Example: ") + row.example);
    command->parse_complete_callback(
        [&chosen, action = row.prepare(*command)] { chosen = action; });
  }
  try {
    program.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return program.exit(error) == 0 ? EX_OK : EX_USAGE;
  }
  return chosen();
}

}  // namespace

int main(int argc, char** argv) {
  try {
    return run(argc, argv);
  } catch (const std::exception& error) {
    std::cerr << "tidewright cannot go on: " << error.what() << '\n';
    return EX_SOFTWARE;
  }
}
