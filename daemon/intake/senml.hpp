// Sensor Measurement Lists (RFC 8428) in JSON: a pack of records, of which one instrument's are
// looked up by their resolved name. Pure and total, as the rest of the door.
// Called by daemon/intake only.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "daemon/intake/json_leaf.hpp"

namespace tidewright::intake {

// One resolved record (RFC 8428, section 4.6): base fields are worked in.
struct SenmlRecord {
  Leaf value;          // a number, text or boolean
  std::string unit;    // as the pack has it; empty = none
  double seconds = 0;  // since 1970, or since now
  bool absolute = false;
};

// The records of that name, in the order of the pack; `nothing_there` if there is none with a
// value. An empty name means the pack's only name. Refused as a whole: what is no pack, a version
// above 10, a label that ends in "_" and so must be understood, a name that is none.
std::variant<std::vector<SenmlRecord>, Refused> senml_records(std::string_view json,
                                                              std::string_view name);

}  // namespace tidewright::intake
