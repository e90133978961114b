#include "daemon/store/database.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <chrono>
#include <stdexcept>

namespace tidewright::store {
namespace {

namespace fs = std::filesystem;

constexpr auto busy_for = std::chrono::milliseconds{500};

// The file is there, but it is not what we wrote.
struct Unreadable : std::runtime_error {
  using std::runtime_error::runtime_error;
};
struct Newer : std::runtime_error {
  using std::runtime_error::runtime_error;
};

fs::path log_of(const fs::path& file) { return file.string() + "-wal"; }
fs::path index_of(const fs::path& file) { return file.string() + "-shm"; }

std::shared_ptr<SQLite::Database> connect(const fs::path& file) {
  auto database = std::make_shared<SQLite::Database>(file.string(),
                                                     SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE,
                                                     static_cast<int>(busy_for.count()));
  database->exec("PRAGMA cache_size = -256");
  return database;
}

void check(SQLite::Database& database, const Format& format) {
  if (database.execAndGet("PRAGMA application_id").getInt() != format.application) {
    throw Unreadable{"it is not a file of tidewright's"};
  }
  const int version = database.execAndGet("PRAGMA user_version").getInt();
  if (version > format.version) {
    throw Newer{
        fmt::format("its format is {}, and this version knows {}", version, format.version)};
  }
  const std::string found = database.execAndGet("PRAGMA quick_check(1)").getString();
  if (found != "ok") throw Unreadable{found};
  SQLite::Statement tables{database, "SELECT sql FROM sqlite_master WHERE sql NOT NULL"};
  for (const std::string_view statement : format.schema) {
    if (statement.empty()) continue;
    if (!tables.executeStep() || tables.getColumn(0).getString() != statement) {
      throw Unreadable{"its tables are not the ones that were made"};
    }
  }
}

void create(SQLite::Database& database, const Format& format) {
  database.exec("PRAGMA journal_mode = WAL");
  SQLite::Transaction all{database};
  database.exec(fmt::format("PRAGMA application_id = {}", format.application));
  database.exec(fmt::format("PRAGMA user_version = {}", format.version));
  for (const std::string_view statement : format.schema) database.exec(std::string{statement});
  all.commit();
}

bool says_damaged(const SQLite::Exception& error) {
  const int code = error.getErrorCode();
  return code == SQLITE_CORRUPT || code == SQLITE_NOTADB || code == SQLITE_ERROR;
}

std::shared_ptr<SQLite::Database> open_existing(const fs::path& file, const Format& format) {
  if (!fs::exists(file) || fs::file_size(file) == 0) throw Unreadable{"it is empty"};
  try {
    auto database = connect(file);
    check(*database, format);
    return database;
  } catch (const SQLite::Exception& error) {
    if (says_damaged(error)) throw Unreadable{error.what()};
    throw;
  }
}

}  // namespace

fs::path set_aside(const fs::path& file) {
  fs::path aside;
  for (int number = 1; aside.empty() || fs::exists(aside) || fs::exists(log_of(aside)); ++number) {
    aside = fmt::format("{}.unreadable-{}", file.string(), number);
  }
  if (fs::exists(file)) fs::rename(file, aside);
  if (fs::exists(log_of(file))) fs::rename(log_of(file), log_of(aside));
  fs::remove(index_of(file));
  return aside;
}

OpenDatabase open_database(const fs::path& file, const Format& format) {
  OpenDatabase opened;
  try {
    opened.existed = fs::exists(file) || fs::exists(log_of(file));
    if (opened.existed) {
      try {
        opened.database = open_existing(file, format);
        return opened;
      } catch (const Unreadable& error) {
        opened.unreadable = error.what();
      }
      opened.set_aside = set_aside(file).string();
    }
    auto database = connect(file);
    create(*database, format);
    opened.database = std::move(database);
  } catch (const Newer& error) {
    opened.newer = true;
    opened.refused = error.what();
  } catch (const std::exception& error) {
    opened.refused = error.what();
  }
  return opened;
}

}  // namespace tidewright::store
