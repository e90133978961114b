// pretend_room: the water room of a household's file on a loopback broker, with sensors and plugs
// that behave like real ones, and a story that befalls it. Used by daemon/demo.sh.
// Exit 0 if the story came true, 1 if it went otherwise, 64 or 78 if it could not begin.
#include <fmt/core.h>

#include <CLI/CLI.hpp>
#include <chrono>
#include <cstdio>
#include <fstream>
#include <iostream>
#include <sstream>

#include "config/reader/reader.hpp"
#include "core/rehearsal/pretend_room.hpp"
#include "tests/pretend_room/narrator.hpp"
#include "tests/pretend_room/story.hpp"
#include "tests/pretend_room/wire.hpp"

namespace {

using namespace tidewright;

struct Arguments {
  std::string config;
  std::string broker = "mqtt://127.0.0.1:1883";
  std::string story;
  std::uint64_t seed = 1;
  double pace = 1;
  double filled = 0.3;
};

std::string text_of(const std::string& file) {
  std::ostringstream text;
  text << std::ifstream(file).rdbuf();
  return text.str();
}

int port_of(const std::string& broker) {
  const std::string loopback = "mqtt://127.0.0.1:";
  if (!broker.starts_with(loopback)) throw std::runtime_error("only " + loopback + "PORT");
  return std::stoi(broker.substr(loopback.size()));
}

bool play(const Arguments& arguments, const config::Household& household) {
  using Clock = std::chrono::steady_clock;
  rehearsal::Settings settings;
  settings.works.begins_filled = arguments.filled;
  const Instant begins{std::chrono::hours{24 * 20'000}};
  rehearsal::PretendRoom pretend(household.room, settings, arguments.seed, begins);
  pretend::Wire wire(household, port_of(arguments.broker));
  pretend::Story story(text_of(arguments.story), begins);
  pretend::Narrator narrator(household.room, pretend);
  const Clock::time_point curtain = Clock::now();
  std::vector<Event> said;
  for (;;) {
    const std::chrono::duration<double, std::milli> played = Clock::now() - curtain;
    const Instant now =
        begins + Duration{static_cast<Duration::rep>(played.count() * arguments.pace)};
    while (pretend.now() < now) {
      said.clear();
      pretend.advance(now, said);
      for (const Event& event : said) wire.publish(event);
    }
    narrator.look(pretend);
    const auto course = story.go_on(pretend, household.room, wire);
    if (course != pretend::Story::Course::under_way) {
      return course == pretend::Story::Course::came_true;
    }
    wire.listen(pretend, support::Milliseconds{5});
  }
}

// Reads the command line and the household's file, and plays. Returns the exit code.
int run(int argc, char** argv) {
  Arguments arguments;
  CLI::App app{"The pretend water room: speaks MQTT like real sensors and plugs"};
  app.add_option("--config", arguments.config, "the household's file")->required();
  app.add_option("--story", arguments.story, "what befalls the room")->required();
  app.add_option("--broker", arguments.broker, "on this machine, mqtt://127.0.0.1:PORT");
  app.add_option("--seed", arguments.seed, "of the sensors' noise");
  app.add_option("--pace", arguments.pace, "the room's seconds per second");
  app.add_option("--filled", arguments.filled, "share of the vat that is full at first, 0 to 1");
  app.footer("Example: pretend_room --config config/demo.toml --story daemon/demo.story --pace 60");
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? 0 : 64;
  }
  const std::string text = text_of(arguments.config);
  const config::Understood understood = config::read(text);
  for (const config::Problem& problem : understood.problems) {
    std::cerr << config::render(problem, arguments.config, text);
  }
  if (!understood.household) return 78;
  return play(arguments, *understood.household) ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv) {
  try {
    return run(argc, argv);
  } catch (const std::exception& error) {
    std::fputs("pretend_room: ", stderr);
    std::fputs(error.what(), stderr);
    std::fputs("\n", stderr);
    return 64;
  }
}
