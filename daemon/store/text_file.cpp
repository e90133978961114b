#include "daemon/store/text_file.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

#include <stdexcept>

#include "daemon/store/checksum.hpp"
#include "daemon/store/database.hpp"

namespace tidewright::store {
namespace {

Format format(int application) {
  return {.application = application, .version = 1, .schema = {R"(CREATE TABLE kept (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  checksum INTEGER NOT NULL,  -- CRC-32 of the text
  text TEXT NOT NULL
) STRICT)"}};
}

std::optional<std::string> read(SQLite::Database& database) {
  SQLite::Statement row{database, "SELECT checksum, text FROM kept"};
  if (!row.executeStep()) return std::nullopt;
  std::string text = row.getColumn(1).getString();
  if (row.getColumn(0).getInt64() != checksum(text)) return std::nullopt;
  return text;
}

}  // namespace

TextFile::TextFile(std::filesystem::path file, int application)
    : file_(std::move(file)), application_(application) {
  try {
    if (!std::filesystem::exists(file_)) return;
    const OpenDatabase opened = open_database(file_, format(application_));
    if (opened.database && opened.set_aside.empty()) text_ = read(*opened.database);
    if (text_) return;
    unreadable_ = opened.unreadable.empty() ? opened.refused : opened.unreadable;
    if (unreadable_.empty()) unreadable_ = "what it says does not fit its checksum";
  } catch (const std::exception& error) {
    unreadable_ = error.what();
  }
}

bool TextFile::write(const std::string& text) {
  try {
    const OpenDatabase opened = open_database(file_, format(application_));
    if (!opened.database) return false;
    opened.database->exec("PRAGMA synchronous = FULL");
    SQLite::Statement row{*opened.database, "REPLACE INTO kept VALUES (1, ?, ?)"};
    row.bind(1, static_cast<std::int64_t>(checksum(text)));
    row.bindNoCopy(2, text);
    row.exec();
    return true;
  } catch (const std::exception&) {
    return false;
  }
}

}  // namespace tidewright::store
