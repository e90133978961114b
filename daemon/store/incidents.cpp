#include "daemon/store/incidents.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <ctime>
#include <functional>
#include <stdexcept>
#include <utility>

#include "daemon/base/descriptor.hpp"
#include "daemon/store/names.hpp"

namespace tidewright::store {
namespace {

namespace fs = std::filesystem;

constexpr Duration after = std::chrono::minutes{30};
constexpr const char* unfinished = ".part";

// `20261128T074512Z-leak.txt`: by name is by age.
std::string name_of(room::RuleId alarm, const State& state) {
  const Instant at = state.alarms[alarm].since;
  const auto wall = at.time_since_epoch() + state.circumstances.wall.ahead;
  const std::time_t unix_time = std::chrono::floor<std::chrono::seconds>(wall).count();
  std::tm utc{};
  gmtime_r(&unix_time, &utc);
  std::array<char, 32> text{};
  std::strftime(text.data(), text.size(), "%Y%m%dT%H%M%SZ", &utc);
  return fmt::format("{}-{}.txt", text.data(), name(alarm));
}

void write_all(int file, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(file, bytes.data(), bytes.size());
    if (written < 0) throw std::runtime_error{"the disk refuses"};
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
}

// All of it under its name, or nothing.
void put(const fs::path& file, const std::function<void(const JournalFile::Take&)>& each_line) {
  const fs::path part = file.string() + unfinished;
  {
    const Descriptor out{
        ::open(part.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644)};  // NOLINT(*-vararg)
    std::string text;
    each_line([&](const std::string& line) {
      text += line;
      text += '\n';
      if (text.size() < 64UL * 1024) return;
      write_all(out.number(), text);
      text.clear();
    });
    write_all(out.number(), text);
    if (fsync(out.number()) != 0) throw std::runtime_error{"the disk refuses"};
  }
  fs::rename(part, file);
}

}  // namespace

Incidents::Incidents(fs::path directory, const IncidentBounds& bounds)
    : directory_(std::move(directory)), bounds_(bounds) {}

void Incidents::begin(const State& state) {
  for (std::size_t i = 0; i < room::rule_count; ++i) {
    occurrences_.items[i] = state.alarms.items[i].occurrence;
  }
}

void Incidents::notice(const State& state) {
  for (std::size_t i = 0; i < room::rule_count; ++i) {
    const std::uint32_t occurrence = state.alarms.items[i].occurrence;
    if (std::exchange(occurrences_.items[i], occurrence) == occurrence || under_way_) continue;
    const auto alarm = static_cast<room::RuleId>(i);
    under_way_ = UnderWay{.raised = state.alarms[alarm].since, .name = name_of(alarm, state)};
  }
}

bool Incidents::over(Instant now, bool ending) const {
  return ending || now - under_way_->raised >= after;
}

bool Incidents::due(Instant now, bool ending) const {
  return under_way_ && (!under_way_->begun || over(now, ending));
}

void Incidents::write(const JournalFile& journal, const std::vector<Written>& chapter, Instant now,
                      bool ending) {
  UnderWay& incident = *under_way_;
  try {
    fs::create_directories(directory_);
    if (incident.first_line == 0) incident.first_line = journal.last_chapter_but_one();
    put(directory_ / incident.name, [&](const JournalFile::Take& take) {
      journal.for_each_line_from(incident.first_line, take);
      for (const Written& line : chapter) take(line.text);
    });
    incident.begun = true;
    if (over(now, ending)) under_way_.reset();
    forget_the_oldest();
  } catch (const std::exception&) {
    std::error_code ignored;
    fs::remove(directory_ / (incident.name + unfinished), ignored);
  }
}

void Incidents::forget_the_oldest() const {
  std::vector<fs::directory_entry> files;
  for (const auto& entry : fs::directory_iterator(directory_)) files.push_back(entry);
  std::sort(files.begin(), files.end(), std::greater<>{});
  std::uintmax_t bytes = 0;
  std::size_t count = 0;
  for (const fs::directory_entry& entry : files) {
    bytes += entry.file_size();
    ++count;
    const bool newest = count == 1;
    if (!newest && (count > bounds_.files_most || bytes > bounds_.bytes_most)) fs::remove(entry);
  }
}

}  // namespace tidewright::store
