#include "daemon/log/log.hpp"

#include <spdlog/pattern_formatter.h>
#include <spdlog/sinks/stdout_sinks.h>
#include <spdlog/spdlog.h>

#include <memory>
#include <mutex>
#include <nlohmann/json.hpp>

#include "daemon/log/repeats.hpp"

namespace tidewright::log {
namespace {

std::mutex lock;
Repeats repeats;
Format chosen = Format::text;
std::shared_ptr<spdlog::logger> logger;

spdlog::level::level_enum level_of(Level level) {
  switch (level) {
    case Level::error:
      return spdlog::level::err;
    case Level::warning:
      return spdlog::level::warn;
    case Level::info:
      break;
  }
  return spdlog::level::info;
}

void prepare() {
  if (logger) return;
  logger = std::make_shared<spdlog::logger>("tidewright",
                                            std::make_shared<spdlog::sinks::stderr_sink_st>());
  logger->set_pattern(chosen == Format::json ? R"({"at":"%Y-%m-%dT%H:%M:%S%z","level":"%l",%v})"
                                             : "%Y-%m-%dT%H:%M:%S%z %l %v");
  logger->flush_on(spdlog::level::info);
}

void write(const std::vector<Line>& lines) {
  prepare();
  for (const Line& line : lines) {
    if (chosen == Format::text) {
      logger->log(level_of(line.level), line.text);
      continue;
    }
    const auto safe = nlohmann::json::error_handler_t::replace;
    logger->log(level_of(line.level),
                "\"text\":" + nlohmann::json(line.text).dump(-1, ' ', false, safe));
  }
}

void say(Level level, std::string_view text) {
  const std::lock_guard guard(lock);
  write(repeats.said(level, text, std::chrono::steady_clock::now()));
}

}  // namespace

void open(Format format) {
  const std::lock_guard guard(lock);
  chosen = format;
}

void info(std::string_view line) { say(Level::info, line); }
void warning(std::string_view line) { say(Level::warning, line); }
void error(std::string_view line) { say(Level::error, line); }

void tend() {
  const std::lock_guard guard(lock);
  write(repeats.due(std::chrono::steady_clock::now()));
}

void close() {
  const std::lock_guard guard(lock);
  write(repeats.due(Repeats::Time::max()));
}

}  // namespace tidewright::log
