// A store on real files in a directory of its own, for tests of what outlives the daemon.
#pragma once

#include <filesystem>
#include <memory>
#include <string>

#include "core/room/room.hpp"
#include "daemon/store/store.hpp"

namespace tidewright::support {

// A directory that goes away with its owner; in memory where there is a place for it.
class MemoryDirectory {
 public:
  MemoryDirectory();
  ~MemoryDirectory();
  MemoryDirectory(const MemoryDirectory&) = delete;
  MemoryDirectory& operator=(const MemoryDirectory&) = delete;
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

// Opens a store that must not be refused.
std::unique_ptr<store::Store> open_store(const std::filesystem::path&, const room::Room&);

// A wet floor at `at`, and the state in which its latch is set.
Event wet_floor(Instant at);
State latched(Instant at, std::uint32_t occurrence);

// Records a wet floor and persists it; the sequence that the announcement must wait for.
std::uint64_t latch(store::Store&, Instant at, std::uint32_t occurrence);

// Waits for the answer to that sequence, as the loop does: by the descriptor.
store::Committed answer_to(store::Store&, std::uint64_t sequence);

}  // namespace tidewright::support
