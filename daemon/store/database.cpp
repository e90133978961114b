#include "daemon/store/database.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <ctime>
#include <stdexcept>
#include <vector>

namespace tidewright::store {
namespace {

namespace fs = std::filesystem;

constexpr auto busy_for = std::chrono::milliseconds{500};
constexpr std::size_t aside_most = 10;

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

void remove_all_of(const fs::path& file) {
  for (const fs::path& part : {file, log_of(file), index_of(file)}) fs::remove(part);
}

void create(const fs::path& file, const Format& format,
            const std::function<void(SQLite::Database&)>& fill) {
  const fs::path nameless = file.string() + ".new";
  remove_all_of(nameless);
  {
    const auto database = connect(nameless);
    SQLite::Transaction all{*database};
    database->exec(fmt::format("PRAGMA application_id = {}", format.application));
    database->exec(fmt::format("PRAGMA user_version = {}", format.version));
    for (const std::string_view statement : format.schema) database->exec(std::string{statement});
    if (fill) fill(*database);
    all.commit();
  }
  remove_all_of(file);  // of a file that is gone, its log may still be there
  fs::rename(nameless, file);
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

// `state.db.unreadable-20261128T074512Z`: by name is by age.
std::string aside_prefix(const fs::path& file) { return file.filename().string() + ".unreadable-"; }

std::string time_for_a_name() {
  const std::time_t now = std::time(nullptr);
  std::tm utc{};
  gmtime_r(&now, &utc);
  std::array<char, 32> text{};
  std::strftime(text.data(), text.size(), "%Y%m%dT%H%M%SZ", &utc);
  return text.data();
}

void forget_the_oldest_aside(const fs::path& file) {
  const std::string log_end = log_of("").string();
  std::vector<fs::path> aside;
  for (const auto& entry : fs::directory_iterator(file.parent_path())) {
    const std::string name = entry.path().filename().string();
    if (name.starts_with(aside_prefix(file)) && !name.ends_with(log_end)) {
      aside.push_back(entry.path());
    }
  }
  std::sort(aside.begin(), aside.end());
  for (std::size_t i = 0; i + aside_most < aside.size(); ++i) remove_all_of(aside[i]);
}

// A folder that goes away with what is in it.
class Scratch {
 public:
  Scratch() {
    std::string name = fs::temp_directory_path() / "tidewright-XXXXXX";
    if (mkdtemp(name.data()) == nullptr) throw std::runtime_error{"no temporary folder"};
    path_ = name;
  }
  ~Scratch() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;
  const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

}  // namespace

fs::path set_aside(const fs::path& file) {
  const fs::path first = file.parent_path() / (aside_prefix(file) + time_for_a_name());
  fs::path aside = first;
  for (int number = 2; fs::exists(aside) || fs::exists(log_of(aside)); ++number) {
    aside = fmt::format("{}-{}", first.string(), number);
  }
  if (fs::exists(file)) fs::rename(file, aside);
  if (fs::exists(log_of(file))) fs::rename(log_of(file), log_of(aside));
  fs::remove(index_of(file));
  forget_the_oldest_aside(file);
  return aside;
}

std::shared_ptr<SQLite::Database> open_copy(const fs::path& file, const Format& format) {
  try {
    auto scratch = std::make_shared<Scratch>();
    const fs::path copy = scratch->path() / file.filename();
    fs::copy_file(file, copy);
    if (fs::exists(log_of(file))) fs::copy_file(log_of(file), log_of(copy));
    auto database = open_existing(copy, format);
    SQLite::Database* const opened = database.get();
    return {opened, [scratch, database](SQLite::Database*) mutable { database.reset(); }};
  } catch (const std::exception&) {
    return nullptr;
  }
}

OpenDatabase open_database(const fs::path& file, const Format& format,
                           const std::function<void(SQLite::Database&)>& fill) {
  OpenDatabase opened;
  try {
    opened.existed = fs::exists(file) || fs::exists(log_of(file));
    if (opened.existed) {
      try {
        opened.database = open_existing(file, format);
        opened.database->exec("PRAGMA journal_mode = WAL");
        return opened;
      } catch (const Unreadable& error) {
        opened.unreadable = error.what();
      }
      opened.set_aside = set_aside(file).string();
    }
    create(file, format, fill);
    opened.database = connect(file);
    opened.database->exec("PRAGMA journal_mode = WAL");
  } catch (const Newer& error) {
    opened.newer = true;
    opened.refused = error.what();
  } catch (const std::exception& error) {
    opened.refused = error.what();
  }
  return opened;
}

}  // namespace tidewright::store
