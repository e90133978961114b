// A field that is added to a struct of the state, but not to its fields(), is found here: the
// members that brace initialisation accepts are counted against the names that the walk gives.
#include "core/state/fields.hpp"

#include <gtest/gtest.h>

#include <set>
#include <string>
#include <utility>

namespace tidewright::state {
namespace {

// Becomes whatever a member wants.
struct Anything {
  template <class T>
  operator T() const;  // NOLINT(google-explicit-constructor): that is its purpose
};

template <class Struct, class... Given>
constexpr std::size_t members() {
  if constexpr (requires { Struct{Given{}..., Anything{}}; }) {
    return members<Struct, Given..., Anything>();
  } else {
    return sizeof...(Given);
  }
}

// Collects the names that one struct gives, and the addresses of what stands behind them.
struct Counter {
  std::set<std::string> names;
  std::set<const void*> places;

  void operator()(const char* name, const auto& member) {
    names.insert(name);
    places.insert(&member);
  }
  void rules(const char* name, const auto& member) { (*this)(name, member); }
  void instruments(const char* name, const auto& member) { (*this)(name, member); }
  void actuators(const char* name, const auto& member) { (*this)(name, member); }
  void supplies(const char* name, const auto& member) { (*this)(name, member); }
};

template <class Struct>
class FieldsTest : public testing::Test {};

using Structs =
    testing::Types<Alarm, Attended, WallClock, Circumstances, Drive, Finding, Latch, Armed, Working,
                   Sample, Samples, GaugeNoise, LevelTrend, Fill, Stretch, Habit, Leak, Shortfall,
                   Draws, Balance, ResinCharge, FeedLevel, Upkeep, Stock, Ledger, MakeWater, Digest,
                   Notice, Notices, Bypass, Bypasses, LeaseTest, LeaseTests, Proof, Trial,
                   MeteredFill, Proofs, Signal, WaterMeter, LevelWindow, BalanceWindow, Comparison,
                   State>;
TYPED_TEST_SUITE(FieldsTest, Structs);

TYPED_TEST(FieldsTest, NamesEachMemberOnce) {
  const TypeParam value{};
  Counter counter;
  fields(counter, value);
  EXPECT_EQ(counter.names.size(), members<TypeParam>()) << "a member is not named in fields.hpp";
  EXPECT_EQ(counter.places.size(), members<TypeParam>()) << "a member is named twice";
}

struct Three {
  int a = 1;
  Instant b, c;
};
static_assert(members<Three>() == 3, "the count itself");

}  // namespace
}  // namespace tidewright::state
