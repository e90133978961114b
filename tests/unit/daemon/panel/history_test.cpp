#include "daemon/panel/history.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/eventually.hpp"
#include "tests/support/rooms.hpp"
#include "tests/support/store_harness.hpp"

namespace tidewright::panel {
namespace {

using namespace std::chrono_literals;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

const Instant now{std::chrono::seconds{1'772'346'600}};

class PanelHistory : public ::testing::Test {
 protected:
  void happens(Instant at, const decltype(Event::what)& what) {
    State state;
    state.circumstances.now = at;
    store->record({at, what}, {}, state);
  }
  std::string page(const std::string& path) const {
    return history.page(path, now, WallClock{}, Style(config::Panel{}));
  }

  support::MemoryDirectory directory;
  room::Room room = support::minimal_room();
  std::unique_ptr<store::Store> store = support::open_store(directory.path(), room);
  History history{room, directory.path() / "journal.db"};
};

TEST_F(PanelHistory, ShowsTheGaugeOfTheLastDayFromTheJournalBesideTheWriter) {
  happens(now - 30h, Reading{.instrument = support::level, .value = 20});
  happens(now - 5h, Reading{.instrument = support::level, .value = 61});
  happens(now - 4h, Reading{.instrument = support::product, .value = 999});
  happens(now - 3h, Tell{.kind = TellKind::rotated, .who = Name("ann")});
  happens(now - 2h, Reading{.instrument = support::level, .value = 152});
  store->persist();
  ASSERT_TRUE(support::eventually(
      10s, [&] { return page("/history").find("highest 152 L") != std::string::npos; }));
  const std::string html = page("/history");
  EXPECT_THAT(html, HasSubstr("Lowest 61 L, highest 152 L."));
  EXPECT_THAT(html, HasSubstr("<code lang=\"en\">rotated</code>, told by ann"));
  EXPECT_THAT(page("/history/level/7d"), HasSubstr("Lowest 20 L, highest 152 L."));
  EXPECT_THAT(page("/history/product/24h"), HasSubstr("Lowest 999 ppm, highest 999 ppm."));
  EXPECT_THAT(page("/history/feed/24h"), HasSubstr("no reading of it"));
}

TEST_F(PanelHistory, HasNumbersOnlyAndNoOtherPages) {
  for (const char* path : {"/history/floor/24h", "/history/feedback/24h", "/history/level/25h",
                           "/history/level", "/history/", "/historyx", "/history/../24h"}) {
    EXPECT_THAT(page(path), IsEmpty()) << path;
  }
  EXPECT_THAT(page("/history"), HasSubstr("<a href=\"/history/product/24h\">"));
  EXPECT_THAT(page("/history"), Not(HasSubstr("/history/floor/")));
}

TEST_F(PanelHistory, SaysSoWhenTheJournalCannotBeRead) {
  const History nowhere(room, directory.path() / "nothing" / "journal.db");
  EXPECT_THAT(nowhere.page("/history", now, WallClock{}, Style(config::Panel{})),
              HasSubstr("cannot be read just now"));
  EXPECT_THAT(History(support::attended_room(), "x")
                  .page("/history", now, WallClock{}, Style(config::Panel{})),
              HasSubstr("No instrument here shows a number."));
}

}  // namespace
}  // namespace tidewright::panel
