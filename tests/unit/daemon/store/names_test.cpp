// Every enumerator is written under its own name: asked of the compiler, which knows them all.
#include "daemon/store/names.hpp"

#include <gtest/gtest.h>

#include <array>
#include <string_view>
#include <utility>

namespace tidewright::store {
namespace {

// "…Value = tidewright::Why::wet]", or "(tidewright::Why)200]" for what is no enumerator.
template <auto Value>
constexpr std::string_view spelled() {
  std::string_view all = __PRETTY_FUNCTION__;
  all = all.substr(all.find("Value = ") + 8);
  all = all.substr(0, all.find_first_of(";]"));
  return all.front() == '(' ? std::string_view{} : all.substr(all.rfind(':') + 1);
}

template <class Enum>
class NamesTest : public testing::Test {
 public:
  template <std::size_t... Values>
  static auto all_spelled(std::index_sequence<Values...>) {
    return std::array{spelled<static_cast<Enum>(Values)>()...};
  }
};

using Enums = testing::Types<Quality, DeviceStatus, Why, state::Suppression, state::Demand, Arrival,
                             AskKind, TellKind, room::RuleId>;
TYPED_TEST_SUITE(NamesTest, Enums);

TYPED_TEST(NamesTest, GivesEachEnumeratorItsOwnName) {
  const auto all = TestFixture::all_spelled(std::make_index_sequence<256>{});
  ASSERT_FALSE(all[0].empty());
  for (std::size_t i = 0; i < all.size(); ++i) {
    const auto value = static_cast<TypeParam>(i);
    EXPECT_EQ(name(value), all[i]);
    if (!all[i].empty()) {
      EXPECT_EQ(named<TypeParam>(all[i]), value);
    }
  }
  EXPECT_EQ(named<TypeParam>("nonsense"), std::nullopt);
  EXPECT_EQ(named<TypeParam>(""), std::nullopt);
}

TEST(SubjectTest, FollowsTheRecordOfEachReason) {
  EXPECT_EQ(subject_of(Why::wet), Subject::instrument);
  EXPECT_EQ(subject_of(Why::resting), Subject::actuator);
  EXPECT_EQ(subject_of(Why::latched), Subject::nothing);
}

}  // namespace
}  // namespace tidewright::store
