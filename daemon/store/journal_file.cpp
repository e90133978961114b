#include "daemon/store/journal_file.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <sqlite3.h>

#include <stdexcept>

#include "daemon/store/line.hpp"

namespace tidewright::store {
namespace {

constexpr Format format{.application = 0x7477'6a6f,  // "twjo"
                        .version = 1,
                        .schema = {R"(CREATE TABLE line (
  id INTEGER PRIMARY KEY,
  instant INTEGER NOT NULL,  -- milliseconds of the room's clock
  opens INTEGER NOT NULL,    -- 1: a chapter begins here
  text TEXT NOT NULL         -- as docs/journal.md says
) STRICT)",
                                   "CREATE INDEX chapter ON line (instant) WHERE opens = 1"}};

// Few enough that the next Persist does not wait long for a day to be dropped.
constexpr int dropped_at_once = 2000;

}  // namespace

JournalFile::JournalFile(const std::filesystem::path& file) : opened_(open_database(file, format)) {
  if (!opened_.database) return;
  try {
    opened_.database->exec("PRAGMA synchronous = NORMAL");
    SQLite::Statement newest{*opened_.database, "SELECT text FROM line ORDER BY id DESC LIMIT 100"};
    while (newest.executeStep()) {
      Line line;
      // A line about an instrument that is gone still has its number and instant.
      parse(newest.getColumn(0).getString(), room::Room{}, line);
      last_sequence_ = std::max(last_sequence_, line.sequence);
      last_ = std::max(last_, line.at);
    }
  } catch (const std::exception& error) {
    opened_.refused = error.what();
  }
}

bool JournalFile::append(const std::vector<Written>& lines) {
  if (!opened_.database) throw std::runtime_error{opened_.refused};
  if (lines.empty()) return true;
  SQLite::Database& database = *opened_.database;
  try {
    SQLite::Transaction all{database, SQLite::TransactionBehavior::IMMEDIATE};
    SQLite::Statement insert{database, "INSERT INTO line (instant, opens, text) VALUES (?, ?, ?)"};
    for (const Written& line : lines) {
      insert.bind(1, static_cast<std::int64_t>(line.at.time_since_epoch().count()));
      insert.bind(2, line.opens ? 1 : 0);
      insert.bindNoCopy(3, line.text);
      insert.exec();
      insert.reset();
    }
    SQLite::Statement drop{database,
                           "DELETE FROM line WHERE id IN (SELECT id FROM line WHERE id < "
                           "(SELECT max(id) FROM line WHERE opens = 1 AND instant < ?) LIMIT ?)"};
    const Instant oldest = lines.back().at - journal_kept;
    drop.bind(1, static_cast<std::int64_t>(oldest.time_since_epoch().count()));
    drop.bind(2, dropped_at_once);
    drop.exec();
    all.commit();
  } catch (const SQLite::Exception& error) {
    if (error.getErrorCode() == SQLITE_BUSY) return false;
    throw;
  }
  return true;
}

void JournalFile::for_each_line(const std::filesystem::path& file,
                                const std::function<void(const std::string&)>& take) {
  SQLite::Database database{file.string(), SQLite::OPEN_READONLY};
  SQLite::Statement lines{database, "SELECT text FROM line ORDER BY id"};
  while (lines.executeStep()) take(lines.getColumn(0).getString());
}

}  // namespace tidewright::store
