#include "config/reader/list_keys.hpp"

#include <fmt/format.h>

#include "config/reader/keys.hpp"

namespace tidewright::config {
namespace {

// "10 s to 1 h; default 120 s", or what there is of it.
std::string limits(const Key& key) {
  std::string text = key.need == Need::required ? "required" : "";
  const auto add = [&](const std::string& more) {
    if (!text.empty()) text += "; ";
    text += more;
  };
  if (!key.low.empty() && !key.high.empty()) add(fmt::format("{} to {}", key.low, key.high));
  if (key.low.empty() && !key.high.empty()) add(fmt::format("at most {}", key.high));
  if (!key.standard.empty()) add(fmt::format("default {}", key.standard));
  return text;
}

std::string example(const Key& key) {
  return parts_of(key.kind).empty() ? std::string{key.example} : "a table";
}

// In a Markdown table a bar parts the columns.
std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '|') out += '\\';
    out += c;
  }
  return out;
}

}  // namespace

std::string keys_as_text() {
  std::string text;
  const Key* before = nullptr;
  for (const Key& key : keys()) {
    if (before == nullptr || before->part != key.part) {
      text += fmt::format("{}{}\n", before == nullptr ? "" : "\n", title(key.part));
    }
    before = &key;
    const std::string known = limits(key);
    text += fmt::format("  {:<22} {:<28} {}{}\n", key.name, example(key), key.help,
                        known.empty() ? "" : fmt::format(" ({})", known));
  }
  return text;
}

std::string keys_as_markdown() {
  std::string text;
  const Key* before = nullptr;
  for (const Key& key : keys()) {
    if (before == nullptr || before->part != key.part) {
      text += fmt::format("{}## {}\n\n| key | example | | |\n|---|---|---|---|\n",
                          before == nullptr ? "" : "\n", escaped(title(key.part)));
    }
    before = &key;
    text += fmt::format("| `{}` | {} | {} | {} |\n", key.name, escaped(example(key)),
                        escaped(limits(key)), escaped(key.help));
  }
  return text;
}

}  // namespace tidewright::config
