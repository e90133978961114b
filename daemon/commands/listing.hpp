// A table of texts and its three forms.
#pragma once

#include <string>
#include <vector>

namespace tidewright::commands {

struct Listing {
  std::string title;                 // of the document that it makes
  std::vector<std::string> columns;  // names that JSON can use: `respond_within`
  std::vector<std::vector<std::string>> rows;
};

// Columns in line; the last one is left ragged.
std::string as_text(const Listing&);
// An array of objects.
std::string as_json(const Listing&);
std::string as_markdown(const Listing&);

Listing list_alarms();
Listing list_interlocks();
Listing list_keys();
Listing list_quantities();
Listing list_topics();

}  // namespace tidewright::commands
