// Any text as a journal: no crash, each line is read or refused in words, and what is read is lived
// through. The first byte says whether the room is given or stands in the journal, and whether the
// lines get a checksum that fits (else nothing would come past it).
#include <fmt/format.h>

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string_view>

#include "daemon/store/checksum.hpp"
#include "daemon/store/line.hpp"
#include "daemon/store/relive.hpp"
#include "tests/support/rooms.hpp"

namespace {

using namespace tidewright;

void must(bool holds, std::string_view what) {
  if (holds) return;
  std::fprintf(stderr, "broken: %.*s\n", static_cast<int>(what.size()), what.data());
  std::abort();
}

std::string print(const room::Room& room, const store::Line& line) {
  if (const auto* event = std::get_if<Event>(&line.what)) {
    return store::print(room, line.sequence, *event, line.raw);
  }
  if (const auto* household = std::get_if<store::HouseholdText>(&line.what)) {
    return store::print(line.sequence, line.at, *household);
  }
  return store::print(line.sequence, line.at, std::get<store::StateText>(line.what));
}

void must_come_back(const room::Room& room, std::string_view text) {
  store::Line line;
  if (const store::Trouble trouble = store::parse(text, room, line)) {
    return must(*trouble != '\0', "a refusal has words");
  }
  const std::string printed = print(room, line);
  must(printed.find('\n') == printed.npos, "a line is one line");
  store::Line again;
  must(store::parse(printed, room, again) == nullptr, "what was printed can be read");
  must(print(room, again) == printed, "and says the same");
}

void must_hold(const store::Moment& moment) {
  bool latched = false;
  for (const state::Latch& latch : moment.state.latches.items) latched = latched || latch.set;
  for (const Effect& effect : moment.effects) {
    const auto* command = std::get_if<Command>(&effect);
    must(!latched || command == nullptr || !command->on, "nothing is ON while a latch stands");
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  static const room::Room given = support::full_room();
  const bool is_given = (data[0] & 1U) != 0;
  const bool seals = (data[0] & 2U) != 0;
  std::string_view rest{reinterpret_cast<const char*>(data) + 1, size - 1};
  std::uint64_t lived = 0;
  store::Relive relive{is_given ? std::optional{given} : std::nullopt,
                       [&](const store::Moment& moment) {
                         ++lived;
                         must_hold(moment);
                       },
                       [](const std::string& trouble) { must(!trouble.empty(), "in words"); }};
  while (!rest.empty()) {
    const auto end = std::min(rest.find('\n'), rest.size());
    const auto body = rest.substr(0, end);
    rest.remove_prefix(std::min(end + 1, rest.size()));
    const std::string line =
        seals ? fmt::format("{} {:08x} {}", store::journal_version, store::checksum(body), body)
              : std::string{body};
    must_come_back(relive.room(), line);
    relive.line(line);
  }
  must(relive.result().events == lived, "each event that was lived is counted");
  return 0;
}
