// What the fuzzers have found worth keeping (tests/fuzz/corpus), through the same entries: each of
// them aborts where something is not as promised.
#include <gtest/gtest.h>

#include <cstdint>
#include <filesystem>
#include <map>
#include <string>

#include "tests/support/process.hpp"

using Entry = int(const std::uint8_t*, std::size_t);
extern "C" {
Entry fuzz_household, fuzz_intake, fuzz_journal, fuzz_numbers, fuzz_request, fuzz_state;
}

namespace tidewright {
namespace {

namespace fs = std::filesystem;

const fs::path fuzzers = fs::path{TIDEWRIGHT_SOURCE_DIR} / "tests" / "fuzz";
const std::map<std::string, Entry*> entries{
    {"household", fuzz_household}, {"intake", fuzz_intake},   {"journal", fuzz_journal},
    {"numbers", fuzz_numbers},     {"request", fuzz_request}, {"state", fuzz_state}};

TEST(Corpus, EveryFuzzerHasOneAndKeepsItsPromisesOnIt) {
  std::size_t sources = 0;
  for (const auto& file : fs::directory_iterator(fuzzers)) {
    if (file.path().extension() != ".cpp") continue;
    ++sources;
    EXPECT_TRUE(entries.contains(file.path().stem())) << file.path();
  }
  EXPECT_EQ(sources, entries.size());
  for (const auto& [name, entry] : entries) {
    std::size_t tried = 0;
    for (const auto& file : fs::directory_iterator(fuzzers / "corpus" / name)) {
      SCOPED_TRACE(file.path());
      const std::string bytes = support::read_file(file.path());
      EXPECT_EQ(entry(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size()), 0);
      ++tried;
    }
    EXPECT_GT(tried, 0U) << name;
  }
}

}  // namespace
}  // namespace tidewright
