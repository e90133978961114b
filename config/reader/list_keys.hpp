// The table of keys as people read it: `tidewright list keys`, and the page of the docs.
#pragma once

#include <string>

namespace tidewright::config {

// One line a key, grouped as the file is.
std::string keys_as_text();
// A heading and a table for each group.
std::string keys_as_markdown();

}  // namespace tidewright::config
