#include "tests/support/store_harness.hpp"

#include <gtest/gtest.h>
#include <poll.h>

#include <cstdlib>

#include "tests/support/rooms.hpp"

namespace tidewright::support {

namespace fs = std::filesystem;

MemoryDirectory::MemoryDirectory() {
  // In memory where there is a place for it: thousands of flushed files would wear out a disk.
  const fs::path parent = fs::is_directory("/dev/shm") ? "/dev/shm" : fs::temp_directory_path();
  std::string name = (parent / "tidewright-XXXXXX").string();
  if (mkdtemp(name.data()) != nullptr) path_ = name;
}

MemoryDirectory::~MemoryDirectory() {
  std::error_code ignored;
  fs::remove_all(path_, ignored);
}

std::unique_ptr<store::Store> open_store(const fs::path& directory, const room::Room& room) {
  auto opened = store::Store::open(directory, room, "room = \"waterroom\"\n");
  EXPECT_EQ(opened.refused, "");
  return std::move(opened.store);
}

Event wet_floor(Instant at) { return {.at = at, .what = Reading{.instrument = floor, .value = 1}}; }

State latched(Instant at, std::uint32_t occurrence) {
  State state;
  state.circumstances.now = at;
  auto& leak = state.latches[room::RuleId::leak];
  leak.set = true;
  leak.since = at;
  leak.cause = {.why = Why::wet, .subject = floor, .numbers = {}};
  state.alarms[room::RuleId::leak].occurrence = occurrence;
  return state;
}

std::uint64_t latch(store::Store& store, Instant at, std::uint32_t occurrence) {
  const auto sequence = store.record(wet_floor(at), "wet", latched(at, occurrence));
  store.persist();
  return sequence;
}

store::Committed answer_to(store::Store& store, std::uint64_t sequence) {
  // Measured: 1 ms alone, 100 ms on a busy machine.
  constexpr int patience_ms = 10'000;
  store::Committed committed = store.committed();
  while (committed.sequence < sequence) {
    pollfd changed{.fd = store.descriptor(), .events = POLLIN, .revents = 0};
    if (poll(&changed, 1, patience_ms) != 1) break;
    committed = store.committed();
  }
  EXPECT_GE(committed.sequence, sequence) << "the disk gave no answer";
  return committed;
}

}  // namespace tidewright::support
