#include "daemon/store/state_file.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <stdexcept>

#include "daemon/store/checksum.hpp"
#include "daemon/store/state_text.hpp"

namespace tidewright::store {
namespace {

constexpr Format format{.application = 0x74777374,  // "twst"
                        .version = 1,
                        .schema = {R"(CREATE TABLE kept (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  sequence INTEGER NOT NULL,  -- of the last event in it
  instant INTEGER NOT NULL,   -- of that event, milliseconds of the room's clock
  clean INTEGER NOT NULL,     -- 1: the run ended on purpose
  checksum INTEGER NOT NULL,  -- CRC-32 of the other columns
  state TEXT NOT NULL         -- one line `path value` a field
) STRICT)"}};

std::int64_t sum(std::int64_t sequence, std::int64_t instant, bool clean, std::string_view state) {
  return checksum(fmt::format("{} {} {:d} {}", sequence, instant, clean, state));
}

void put(SQLite::Database& database, const room::Room& room, const Kept& kept) {
  const auto sequence = static_cast<std::int64_t>(kept.sequence);
  const std::int64_t instant = kept.at.time_since_epoch().count();
  const std::string text = to_text(room, kept.state);
  SQLite::Statement row{database, "REPLACE INTO kept VALUES (1, ?, ?, ?, ?, ?)"};
  row.bind(1, sequence);
  row.bind(2, instant);
  row.bind(3, kept.clean ? 1 : 0);
  row.bind(4, sum(sequence, instant, kept.clean, text));
  row.bindNoCopy(5, text);
  row.exec();
}

OpenDatabase open(const std::filesystem::path& file, const room::Room& room, const Kept& first) {
  return open_database(file, format,
                       [&](SQLite::Database& database) { put(database, room, first); });
}

}  // namespace

StateFile::StateFile(const std::filesystem::path& file, const room::Room& room, Kept& kept)
    : file_(file) {
  try {
    opened_ = open(file, room, Kept{});
    const bool to_be_read = opened_.existed && opened_.set_aside.empty();
    if (!opened_.database && !opened_.newer && to_be_read) {
      const auto copy = open_copy(file, format);
      was_read_ = copy && read(*copy, room, kept) == nullptr;
    } else if (opened_.database && to_be_read) {
      const char* const trouble = read(*opened_.database, room, kept);
      was_read_ = trouble == nullptr;
      if (!was_read_) begin_anew(room, trouble);
    }
    if (!opened_.database) return;
    Kept under_way = kept;
    under_way.clean = false;
    opened_.database->exec("PRAGMA synchronous = FULL");
    write(room, under_way);
    marked_ = true;
  } catch (const std::exception& error) {
    opened_.refused = error.what();
  }
}

void StateFile::begin_anew(const room::Room& room, const char* trouble) {
  opened_ = {};
  const auto aside = set_aside(file_);
  opened_ = open(file_, room, Kept{});
  opened_.existed = true;
  opened_.set_aside = aside.string();
  opened_.unreadable = trouble;
}

// Nullptr, or why not.
const char* StateFile::read(SQLite::Database& database, const room::Room& room, Kept& kept) {
  constexpr const char* damaged = "what it says does not fit its checksum";
  try {
    SQLite::Statement row{database, "SELECT sequence, instant, clean, checksum, state FROM kept"};
    if (!row.executeStep()) return "it is empty";
    const std::int64_t sequence = row.getColumn(0).getInt64();
    const std::int64_t instant = row.getColumn(1).getInt64();
    const bool clean = row.getColumn(2).getInt() == 1;
    const std::string text = row.getColumn(4).getString();
    if (row.getColumn(3).getInt64() != sum(sequence, instant, clean, text)) return damaged;
    Kept read{.sequence = static_cast<std::uint64_t>(sequence),
              .at = Instant{Duration{instant}},
              .clean = clean,
              .state = {}};
    if (!from_text(room, text, read.state)) {
      return "it holds words that this version does not know: another version wrote it";
    }
    kept = read;
    text_ = text;
    return nullptr;
  } catch (const SQLite::Exception&) {
    return damaged;
  }
}

void StateFile::write(const room::Room& room, const Kept& kept) {
  if (!opened_.database) {
    if (opened_.newer) throw std::runtime_error{opened_.refused};
    const OpenDatabase late = open(file_, room, kept);
    if (!late.database) throw std::runtime_error{late.refused};
    opened_.database = late.database;
    opened_.database->exec("PRAGMA synchronous = FULL");
  }
  put(*opened_.database, room, kept);
}

}  // namespace tidewright::store
