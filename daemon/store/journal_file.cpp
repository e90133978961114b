#include "daemon/store/journal_file.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <sqlite3.h>

#include <algorithm>
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

constexpr auto synchronous = "PRAGMA synchronous = NORMAL";

std::int64_t milliseconds(Instant at) { return at.time_since_epoch().count(); }

// A line about an instrument that is gone still has its number and instant.
Line number_and_instant(const std::string& text) {
  Line line;
  parse(text, room::Room{}, line);
  return line;
}

}  // namespace

JournalFile::JournalFile(const std::filesystem::path& file, const Ring& ring)
    : file_(file), ring_(ring), opened_(open_database(file, format)) {
  if (!opened_.database) return;
  try {
    opened_.database->exec(synchronous);
    SQLite::Statement newest{*opened_.database, "SELECT text FROM line ORDER BY id DESC LIMIT 100"};
    while (newest.executeStep()) {
      const Line line = number_and_instant(newest.getColumn(0).getString());
      last_sequence_ = std::max(last_sequence_, line.sequence);
      last_ = std::max(last_, line.at);
    }
  } catch (const std::exception& error) {
    opened_.refused = error.what();
  }
}

bool JournalFile::append(const std::vector<Written>& lines) {
  if (!opened_.database) {
    const OpenDatabase late = open_database(file_, format);
    if (!late.database) throw std::runtime_error{late.refused};
    opened_.database = late.database;
    opened_.database->exec(synchronous);
  }
  if (lines.empty()) return true;
  SQLite::Database& database = *opened_.database;
  try {
    SQLite::Transaction all{database, SQLite::TransactionBehavior::IMMEDIATE};
    SQLite::Statement insert{database, "INSERT INTO line (instant, opens, text) VALUES (?, ?, ?)"};
    for (const Written& line : lines) {
      insert.bind(1, milliseconds(line.at));
      insert.bind(2, line.opens ? 1 : 0);
      insert.bindNoCopy(3, line.text);
      insert.exec();
      insert.reset();
    }
    drop_what_is_old(lines.back().at);
    all.commit();
  } catch (const SQLite::Exception& error) {
    if (error.getErrorCode() == SQLITE_BUSY) return false;
    throw;
  }
  return true;
}

void JournalFile::drop_what_is_old(Instant newest) {
  SQLite::Database& database = *opened_.database;
  SQLite::Statement too_old{database, "SELECT max(id) FROM line WHERE opens = 1 AND instant < ?"};
  too_old.bind(1, milliseconds(newest - ring_.kept));
  if (too_old.executeStep()) drop_below(too_old.getColumn(0).getInt64());
  if (bytes() <= ring_.bytes_most) return;
  SQLite::Statement second{database,
                           "SELECT min(id) FROM line INDEXED BY chapter "
                           "WHERE opens = 1 AND id > (SELECT min(id) FROM line)"};
  if (second.executeStep()) drop_below(second.getColumn(0).getInt64());
}

void JournalFile::drop_below(std::int64_t id) {
  SQLite::Statement drop{*opened_.database,
                         "DELETE FROM line WHERE id IN "
                         "(SELECT id FROM line WHERE id < ? ORDER BY id LIMIT ?)"};
  drop.bind(1, id);
  drop.bind(2, dropped_at_once);
  drop.exec();
}

std::int64_t JournalFile::bytes() const {
  SQLite::Database& database = *opened_.database;
  const auto figure = [&](const char* pragma) { return database.execAndGet(pragma).getInt64(); };
  return (figure("PRAGMA page_count") - figure("PRAGMA freelist_count")) *
         figure("PRAGMA page_size");
}

std::string JournalFile::newest_household() const {
  if (!opened_.database) return {};
  SQLite::Statement newest{*opened_.database,
                           "SELECT text FROM line WHERE opens = 1 "
                           "ORDER BY instant DESC, id DESC LIMIT 1"};
  Line line;
  if (!newest.executeStep()) return {};
  parse(newest.getColumn(0).getString(), room::Room{}, line);
  const auto* household = std::get_if<HouseholdText>(&line.what);
  return household != nullptr ? household->text : std::string{};
}

std::vector<std::string> JournalFile::lines_after(std::uint64_t sequence) const {
  std::vector<std::string> lines;
  if (!opened_.database) return lines;
  SQLite::Statement newest{*opened_.database, "SELECT text, opens FROM line ORDER BY id DESC"};
  while (newest.executeStep()) {
    std::string text = newest.getColumn(0).getString();
    const bool found = sequence > 0 && number_and_instant(text).sequence <= sequence;
    if (found) break;
    lines.push_back(std::move(text));
    if (newest.getColumn(1).getInt() == 1) break;
  }
  std::reverse(lines.begin(), lines.end());
  return lines;
}

std::int64_t JournalFile::last_chapter_but_one() const {
  if (!opened_.database) return 0;
  SQLite::Statement newest{*opened_.database,
                           "SELECT id FROM line WHERE opens = 1 "
                           "ORDER BY instant DESC, id DESC LIMIT 2"};
  std::int64_t id = 0;
  while (newest.executeStep()) id = newest.getColumn(0).getInt64();
  return id;
}

void JournalFile::for_each_line_from(std::int64_t id, const Take& take) const {
  SQLite::Statement lines{*opened_.database, "SELECT text FROM line WHERE id >= ? ORDER BY id"};
  lines.bind(1, id);
  while (lines.executeStep()) take(lines.getColumn(0).getString());
}

void JournalFile::for_each_line_since(const std::filesystem::path& file, Instant since,
                                      const std::vector<std::string>& words, const Take& take) {
  SQLite::Database database{file.string(), SQLite::OPEN_READONLY};
  database.exec("PRAGMA cache_size = -256");  // KiB: what was read once is not read again
  SQLite::Statement lines{database,
                          "SELECT text FROM line WHERE id >= coalesce((SELECT max(id) FROM line "
                          "WHERE opens = 1 AND instant <= ?), 0) ORDER BY id"};
  lines.bind(1, milliseconds(since));
  while (lines.executeStep()) {
    const SQLite::Column text = lines.getColumn(0);
    const std::string_view line{text.getText(), static_cast<std::size_t>(text.getBytes())};
    const bool wanted = std::any_of(words.begin(), words.end(), [&](const std::string& word) {
      return line.find(word) != line.npos;
    });
    if (wanted) take(std::string(line));
  }
}

void JournalFile::for_each_line(const std::filesystem::path& file, const Take& take) {
  SQLite::Database database{file.string(), SQLite::OPEN_READONLY};
  SQLite::Statement lines{database, "SELECT text FROM line ORDER BY id"};
  while (lines.executeStep()) take(lines.getColumn(0).getString());
}

}  // namespace tidewright::store
