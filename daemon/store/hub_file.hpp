// `hub.db`: what hubs were told, as one text (daemon/hub/manifest). Opened only to be read at the
// start and when something new is about to be published. Used by the report thread alone.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

namespace tidewright::store {

class HubFile {
 public:
  explicit HubFile(const std::filesystem::path& directory);

  // As found at the start; none at the very first one, or if it could not be read.
  const std::optional<std::string>& text() const { return text_; }
  // What a person should know of that, for the log; empty if nothing.
  const std::string& remark() const { return remark_; }

  // On the platter when it returns true; false if the disk refuses, and the old text is still
  // there.
  bool write(const std::string& text);

 private:
  std::filesystem::path file_;
  std::optional<std::string> text_;
  std::string remark_;
};

}  // namespace tidewright::store
