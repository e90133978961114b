// The household file's grammar as JSON Schema, draft 2020-12, made of the key table: an editor that
// knows TOML completes names and shows each key's help with it. It judges each key by itself;
// `check` judges how they go together.
#pragma once

#include <string>

namespace tidewright::commands {

std::string household_schema();

}  // namespace tidewright::commands
