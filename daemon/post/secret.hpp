// A secret in a file of its own.
#pragma once

#include <optional>
#include <string>

namespace tidewright::post {

// The first line; none if the file cannot be read or that line is empty.
std::optional<std::string> secret_in(const std::string& file);

}  // namespace tidewright::post
