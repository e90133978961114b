#include "daemon/intake/text.hpp"

#include <gtest/gtest.h>

namespace tidewright::intake {
namespace {

// RFC 3629, section 3 (which bytes never occur) and section 7 (examples), and the edges of each
// row of the table in section 4.
TEST(Text, KnowsUtf8) {
  EXPECT_TRUE(is_utf8(""));
  EXPECT_TRUE(is_utf8("A\xE2\x89\xA2\xCE\x91."));
  EXPECT_TRUE(is_utf8("\xED\x95\x9C\xEA\xB5\xAD\xEC\x96\xB4"));
  EXPECT_TRUE(is_utf8("\xF0\xA3\x8E\xB4"));
  EXPECT_TRUE(is_utf8("\xC2\x80\xDF\xBF\xE0\xA0\x80\xED\x9F\xBF\xEE\x80\x80\xEF\xBF\xBF"));
  EXPECT_TRUE(is_utf8("\xF0\x90\x80\x80\xF4\x8F\xBF\xBF"));
  for (const char* bytes :
       {"\xC0\x80", "\xC1\xBF", "\xE0\x9F\xBF", "\xED\xA0\x80", "\xED\xBF\xBF", "\xF0\x8F\xBF\xBF",
        "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xFF", "\x80", "\xC2", "\xE2\x89", "\xF0\xA3\x8E",
        "\xC2\x41", "\xE2\x89\x41"}) {
    EXPECT_FALSE(is_utf8(bytes));
  }
}

}  // namespace
}  // namespace tidewright::intake
