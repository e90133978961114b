#include "daemon/post/secret.hpp"

#include <fstream>

namespace tidewright::post {

std::optional<std::string> secret_in(const std::string& file) {
  std::ifstream in(file);
  std::string line;
  if (!std::getline(in, line)) return std::nullopt;
  if (line.ends_with('\r')) line.pop_back();  // as some editors end a line
  if (line.empty()) return std::nullopt;
  return line;
}

}  // namespace tidewright::post
