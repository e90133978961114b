// The page of curves: one instrument at a time, read from the journal when somebody asks for it.
#pragma once

#include <filesystem>
#include <mutex>
#include <string>

#include "core/base/instant.hpp"
#include "core/room/room.hpp"
#include "daemon/panel/style.hpp"

namespace tidewright::panel {

class History {
 public:
  // `journal`: the store's file.
  History(const room::Room& room, std::filesystem::path journal)
      : room_(room), journal_(std::move(journal)) {}

  // `path`: "/history", "/history/<instrument>/<span>"; the HTML of the page, or nothing if there
  // is no such curve. By any thread; one curve is read at a time.
  std::string page(const std::string& path, Instant now, const WallClock& wall,
                   const Style& style) const;

 private:
  std::string curve(room::InstrumentIndex, Duration span, Instant now, const WallClock& wall,
                    const Style& style) const;

  const room::Room& room_;
  const std::filesystem::path journal_;
  mutable std::mutex reading_;
};

}  // namespace tidewright::panel
