// Opens one of the store's two SQLite files, or makes it anew when it cannot be read.
#pragma once

#include <array>
#include <filesystem>
#include <functional>
#include <memory>
#include <string>
#include <string_view>

namespace SQLite {
class Database;
}

namespace tidewright::store {

// What makes a file ours.
struct Format {
  int application;                         // SQLite's application_id
  int version;                             // SQLite's user_version; a newer one is refused
  std::array<std::string_view, 2> schema;  // statements that make a new file; the last may be empty
};

struct OpenDatabase {
  std::shared_ptr<SQLite::Database> database;  // none if the disk refuses
  std::string refused;     // the disk's reason, or that a newer program wrote the file
  bool newer = false;      // the latter
  bool existed = false;    // there was a file, readable or not
  std::string set_aside;   // the new path of what could not be read; else empty
  std::string unreadable;  // and why
};

// Write-ahead log. A file that is empty, cut, damaged or not ours is renamed, never overwritten.
// A new file is there whole, or not at all: `fill` puts its first rows in before it gets its name.
OpenDatabase open_database(const std::filesystem::path& file, const Format& format,
                           const std::function<void(SQLite::Database&)>& fill = {});

// The same file, only to be read, where the disk takes nothing: a copy in the system's temporary
// folder, gone with the database. None if even that fails, or if the file cannot be read.
std::shared_ptr<SQLite::Database> open_copy(const std::filesystem::path& file,
                                            const Format& format);

// Renames the file and its log, so that the day and time stand in its name, and returns that name.
// The oldest of more than ten such files is removed.
std::filesystem::path set_aside(const std::filesystem::path& file);

}  // namespace tidewright::store
