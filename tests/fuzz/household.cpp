// Any bytes at all as the household's file: never a crash, never a wrong household.
// Seeds: tests/broken and config.
#include <cstdint>
#include <cstdio>
#include <cstdlib>

#include "config/protection.hpp"
#include "config/reader/reader.hpp"

namespace {

void must(bool holds, const char* what) {
  if (holds) return;
  std::fprintf(stderr, "broken: %s\n", what);
  std::abort();
}

void must_be_sound(const tidewright::config::Household& household) {
  const auto& room = household.room;
  must(room.instruments.size() == household.sources.size(), "one source for each instrument");
  must(room.actuators.size() == household.outlets.size(), "one outlet for each actuator");
  must(room.instruments.size() <= tidewright::room::instruments_max, "instruments fit");
  must(room.actuators.size() <= tidewright::room::actuators_max, "actuators fit");
  must(!room.id.empty(), "the room has a name");
  for (const auto& instrument : room.instruments) {
    must(!instrument.id.empty() && instrument.id.size() <= 64, "ids are 1 to 64 long");
    must(instrument.gross_low < instrument.gross_high, "ranges are not empty");
  }
  for (std::size_t i = 1; i < household.marks.size(); ++i) {
    must(household.marks[i - 1].at < household.marks[i].at, "marks rise");
  }
  must(!words(tidewright::config::protection(household), household).empty(), "check has words");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text{reinterpret_cast<const char*>(data), size};
  const auto understood = tidewright::config::read(text);
  must(understood.household.has_value() == understood.problems.empty(), "problems or a household");
  for (const auto& problem : understood.problems) {
    must(problem.line >= 1 && problem.column >= 1, "places count from 1");
    must(!render(problem, "file", text).empty(), "each problem has words");
  }
  if (understood.household) must_be_sound(*understood.household);
  return 0;
}
