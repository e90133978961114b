#include "daemon/store/hub_file.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <stdexcept>

#include "daemon/store/checksum.hpp"
#include "daemon/store/database.hpp"

namespace tidewright::store {
namespace {

constexpr Format format{.application = 0x74776862,  // "twhb"
                        .version = 1,
                        .schema = {R"(CREATE TABLE told (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  checksum INTEGER NOT NULL,  -- CRC-32 of the text
  text TEXT NOT NULL          -- one line for each thing that a hub was told of
) STRICT)"}};

std::optional<std::string> read(SQLite::Database& database) {
  SQLite::Statement row{database, "SELECT checksum, text FROM told"};
  if (!row.executeStep()) return std::nullopt;
  std::string text = row.getColumn(1).getString();
  if (row.getColumn(0).getInt64() != checksum(text)) return std::nullopt;
  return text;
}

}  // namespace

HubFile::HubFile(const std::filesystem::path& directory) : file_(directory / "hub.db") {
  try {
    if (!std::filesystem::exists(file_)) return;
    const OpenDatabase opened = open_database(file_, format);
    if (opened.database && opened.set_aside.empty()) text_ = read(*opened.database);
    if (text_) return;
    const std::string why = opened.unreadable.empty() ? opened.refused : opened.unreadable;
    remark_ = fmt::format(
        "What hubs were told could not be read ({}). They are told anew, under new ids: remove the "
        "old device there by hand.",
        why.empty() ? "what it says does not fit its checksum" : why);
  } catch (const std::exception& error) {
    remark_ = fmt::format("What hubs were told could not be read ({}).", error.what());
  }
}

bool HubFile::write(const std::string& text) {
  try {
    const OpenDatabase opened = open_database(file_, format);
    if (!opened.database) return false;
    opened.database->exec("PRAGMA synchronous = FULL");
    SQLite::Statement row{*opened.database, "REPLACE INTO told VALUES (1, ?, ?)"};
    row.bind(1, static_cast<std::int64_t>(checksum(text)));
    row.bindNoCopy(2, text);
    row.exec();
    return true;
  } catch (const std::exception&) {
    return false;
  }
}

}  // namespace tidewright::store
