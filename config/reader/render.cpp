#include <fmt/format.h>

#include <algorithm>

#include "config/reader/reader.hpp"

namespace tidewright::config {
namespace {

std::string_view line_of(std::string_view text, int line) {
  for (int i = 1; i < line; ++i) {
    const std::size_t end = text.find('\n');
    if (end == text.npos) return {};
    text.remove_prefix(end + 1);
  }
  std::string_view found = text.substr(0, text.find('\n'));
  if (found.ends_with('\r')) found.remove_suffix(1);
  return found;
}

// Its key, and that there is a value.
std::string without_value(std::string_view line) {
  const std::size_t equals = line.find('=');
  return equals == line.npos ? "…" : std::string(line.substr(0, equals + 1)) + " …";
}

// As wide on a screen as the line before the column; tabs stay tabs.
std::string blank_before(std::string_view line, int column) {
  std::string blank;
  for (const char c : line) {
    const bool continues = (static_cast<unsigned char>(c) & 0xc0U) == 0x80U;  // of a UTF-8 letter
    if (continues) continue;
    if (--column < 1) break;
    blank += c == '\t' ? '\t' : ' ';
  }
  return blank;
}

}  // namespace

std::string render(const Problem& problem, std::string_view file_name, std::string_view text) {
  const std::string_view whole = line_of(text, problem.line);
  const std::string line = problem.secret ? without_value(whole) : std::string(whole);
  std::string shown =
      fmt::format("{}:{}:{}: error: {}\n", file_name, problem.line, problem.column, problem.what);
  const std::string number = fmt::format("{:>4} | ", problem.line);
  shown += fmt::format("{}{}\n", number, line);
  shown += fmt::format("     | {}^\n", blank_before(line, problem.column));
  if (!problem.hint.empty()) shown += fmt::format("     | {}\n", problem.hint);
  return shown;
}

}  // namespace tidewright::config
