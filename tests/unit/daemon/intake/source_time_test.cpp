#include "daemon/intake/source_time.hpp"

#include <gtest/gtest.h>

namespace tidewright::intake {
namespace {

using std::chrono::minutes;
using std::chrono::seconds;

// Expected seconds: RFC 3339, section 5.8, gives these texts and says which are the same instant;
// the count since 1970 is by `date -u -d TEXT +%s` of GNU coreutils.
TEST(SourceTime, ReadsTheTimesOfRfc3339) {
  EXPECT_EQ(utc_time("1985-04-12T23:20:50.52Z", minutes{0}), Duration{482'196'050'520});
  EXPECT_EQ(utc_time("1996-12-19T16:39:57-08:00", minutes{0}), seconds{851'042'397});
  EXPECT_EQ(utc_time("1996-12-20T00:39:57Z", minutes{0}), seconds{851'042'397});
  EXPECT_EQ(utc_time("1937-01-01T12:00:27.87+00:20", minutes{0}), Duration{-1'041'337'172'130});
  EXPECT_EQ(utc_time("1990-12-31T23:59:60Z", minutes{0}), seconds{662'688'000});
}

TEST(SourceTime, ATimeWithoutOffsetIsLocal) {
  EXPECT_EQ(utc_time("2027-01-15T09:00:00", minutes{60}), seconds{1'800'000'000});
  EXPECT_EQ(utc_time("2027-01-15 08:00", minutes{0}), seconds{1'800'000'000});
  EXPECT_EQ(utc_time("2027-01-15T10:30:00+0230", minutes{0}), seconds{1'800'000'000});
  EXPECT_EQ(utc_time("2027-01-15T10:00:00,5+02", minutes{0}), Duration{1'800'000'000'500});
}

TEST(SourceTime, ReadsUnixSeconds) {
  EXPECT_EQ(utc_time("1800000000", minutes{60}), seconds{1'800'000'000});
  EXPECT_EQ(utc_time("1800000000.25", minutes{60}), Duration{1'800'000'000'250});
}

TEST(SourceTime, RefusesWhatIsNoTime) {
  for (const char* text :
       {"", "noon", "2027-02-29T00:00:00Z", "2027-13-01T00:00:00Z", "2027-01-15", "2027-01-15T",
        "2027-01-15T24:00:00Z", "2027-01-15T08:60:00Z", "2027-01-15T08:00:61Z",
        "2027-01-15T08:00:00.Z", "2027-01-15T08:00:00Zulu", "2027-01-15T08:00:00+2",
        "2027-01-15T08:00:00+25:00", "27-01-15T08:00:00Z", "1e12", "NaN"}) {
    EXPECT_EQ(utc_time(text, minutes{0}), std::nullopt) << text;
  }
}

}  // namespace
}  // namespace tidewright::intake
