// A daemon without its lines, for tests of what it leaves on the disk: steps, records, persists.
#pragma once

#include <filesystem>
#include <memory>
#include <string>
#include <string_view>

#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/room/room.hpp"
#include "core/state/state.hpp"
#include "daemon/store/store.hpp"

namespace tidewright::support {

// The text of config/minimal.toml.
std::string minimal_household();

class Night {
 public:
  // Begins where the run before in that directory ended; it begins at 2025-10-09 08:53:20 UTC.
  explicit Night(const std::filesystem::path& directory,
                 const std::string& household = minimal_household(), const store::Ring& ring = {});

  // A second later.
  void happen(const decltype(Event::what)& what, std::string_view raw = {});
  // Started as the store found it, the clock, the link, and a dry floor.
  void begin();
  void floor_says(bool wet);
  void sleep(Duration lasting) { now_ += lasting; }
  // Until the journal has a chapter that opens after the last event.
  void wait_for_chapter() const;
  // Until the journal has every event.
  void wait_for_journal() const;
  // On purpose. Without it, destruction is a crash.
  void end();

  const room::Room& room() const { return room_; }
  const State& state() const { return state_; }
  Instant now() const { return now_; }
  store::Store& store() { return *store_; }
  room::InstrumentIndex instrument(room::Quantity quantity, room::Place place) const;

 private:
  room::Room room_;
  std::unique_ptr<store::Store> store_;
  State state_;
  Effects effects_;
  std::filesystem::path journal_;
  std::uint64_t sequence_ = 0;
  Instant now_{Duration{1'760'000'000'000}};
};

}  // namespace tidewright::support
