// What the daemon has told hubs. Kept over restarts (daemon/store/text_file), for without it
// nothing could be taken back and no id would stay the same. Pure.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace tidewright::hub {

// An instrument or supply of the household's file, and the key that stays with it whatever it is
// called and wherever it speaks.
struct Part {
  std::string key;      // `level_vat_1`
  std::string name;     // its id in the file
  std::string where;    // the topic and pointer on which it speaks; may be empty
  bool present = true;  // in the file as it was read last
  friend bool operator==(const Part&, const Part&) = default;
};

struct Manifest {
  std::string instance;  // 12 hex digits, made at the first start
  std::vector<Part> parts;
  std::map<std::string, std::string> components;  // key and platform of what a hub was shown
  std::set<std::string> topics;  // on which the broker may retain something of ours
  friend bool operator==(const Manifest&, const Manifest&) = default;
};

// A line for each, that starts with what it is.
std::string to_text(const Manifest&);
// None if it is not such a text.
std::optional<Manifest> manifest_of(std::string_view text);

}  // namespace tidewright::hub
