#include "daemon/hub/manifest.hpp"

#include <fmt/format.h>

namespace tidewright::hub {
namespace {

// Up to the next space, which is taken too.
std::string_view word(std::string_view& line) {
  const std::size_t end = line.find(' ');
  const std::string_view first = line.substr(0, end);
  line.remove_prefix(end == line.npos ? line.size() : end + 1);
  return first;
}

bool take(std::string_view line, Manifest& manifest) {
  const std::string_view kind = word(line);
  if (kind == "instance") {
    manifest.instance = line;
  } else if (kind == "part" || kind == "gone") {
    Part part;
    part.key = word(line);
    part.name = word(line);
    part.where = line;
    part.present = kind == "part";
    manifest.parts.push_back(std::move(part));
  } else if (kind == "component") {
    const std::string key{word(line)};
    manifest.components[key] = line;
  } else if (kind == "topic") {
    manifest.topics.insert(std::string(line));
  } else {
    return false;
  }
  return true;
}

}  // namespace

std::string to_text(const Manifest& manifest) {
  std::string text = fmt::format("instance {}\n", manifest.instance);
  for (const Part& part : manifest.parts) {
    text += fmt::format("{} {} {} {}\n", part.present ? "part" : "gone", part.key, part.name,
                        part.where);
  }
  for (const auto& [key, platform] : manifest.components) {
    text += fmt::format("component {} {}\n", key, platform);
  }
  for (const std::string& topic : manifest.topics) text += fmt::format("topic {}\n", topic);
  return text;
}

std::optional<Manifest> manifest_of(std::string_view text) {
  Manifest manifest;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    if (end == text.npos || !take(text.substr(0, end), manifest)) return std::nullopt;
    text.remove_prefix(end + 1);
  }
  if (manifest.instance.empty()) return std::nullopt;
  return manifest;
}

}  // namespace tidewright::hub
