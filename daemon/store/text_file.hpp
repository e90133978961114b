// A file that holds one text and its checksum: what hubs were told (`hub.db`), what is on its way
// to people (`outbox.db`). Opened only to be read at the start and when the text is another one.
// Used by the report thread alone.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

namespace tidewright::store {

class TextFile {
 public:
  // `application` is SQLite's application_id of this sort of file.
  TextFile(std::filesystem::path file, int application);

  // As found at the start; none at the very first one, or if it could not be read.
  const std::optional<std::string>& text() const { return text_; }
  // Why it could not be read; empty if nothing is wrong.
  const std::string& unreadable() const { return unreadable_; }

  // On the platter when it returns true; false if the disk refuses, and the old text is still
  // there.
  bool write(const std::string& text);

 private:
  std::filesystem::path file_;
  int application_;
  std::optional<std::string> text_;
  std::string unreadable_;
};

}  // namespace tidewright::store
