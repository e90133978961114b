#include "tests/support/night.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "config/reader/reader.hpp"
#include "core/step.hpp"
#include "daemon/store/journal_file.hpp"
#include "daemon/store/line.hpp"
#include "tests/support/eventually.hpp"
#include "tests/support/process.hpp"
#include "tests/support/store_harness.hpp"

namespace tidewright::support {

namespace fs = std::filesystem;

std::string minimal_household() { return read_file(TIDEWRIGHT_SOURCE_DIR "/config/minimal.toml"); }

Night::Night(const fs::path& directory, const std::string& household, const store::Ring& ring)
    : room_(config::read(household).household.value().room),
      store_(store::Store::open(directory, room_, household, ring).store),
      state_(store_->found().state),
      journal_(directory / "journal.db") {
  now_ = std::max(now_, store_->found().last);
}

void Night::happen(const decltype(Event::what)& what, std::string_view raw) {
  now_ += std::chrono::seconds{1};
  const Event event{.at = now_, .what = what};
  step(room_, state_, event, effects_);
  sequence_ = store_->record(event, raw, state_);
  for (const Effect& effect : effects_) {
    if (!std::holds_alternative<Persist>(effect)) continue;
    store_->persist();
    answer_to(*store_, sequence_);
  }
}

void Night::begin() {
  const store::Found& found = store_->found();
  happen(Started{.clean = found.clean, .away = Duration{0}, .readable = found.readable});
  happen(ClockSet{{.ahead = Duration{0}, .zone = std::chrono::minutes{60}}});
  happen(Link{.up = true});
  floor_says(false);
}

void Night::floor_says(bool wet) {
  happen(Reading{.instrument = instrument(room::Quantity::wetness, room::Place::floor),
                 .value = wet ? 1.0 : 0.0},
         wet ? "wet" : "dry");
}

void Night::wait_for_chapter() const {
  EXPECT_TRUE(eventually(std::chrono::seconds{10}, [&] {
    bool found = false;
    store::JournalFile::for_each_line(journal_, [&](const std::string& text) {
      store::Line line;
      found = store::parse(text, room_, line) == nullptr && line.sequence == sequence_ &&
              std::holds_alternative<store::StateText>(line.what);
    });
    return found;
  }));
}

void Night::wait_for_journal() const {
  EXPECT_TRUE(
      eventually(std::chrono::seconds{10}, [&] { return store_->recorded() >= sequence_; }));
}

void Night::end() { EXPECT_TRUE(store_->close()); }

room::InstrumentIndex Night::instrument(room::Quantity quantity, room::Place place) const {
  return room::find(room_, quantity, place).value();
}

}  // namespace tidewright::support
