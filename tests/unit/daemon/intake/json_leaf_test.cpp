#include "daemon/intake/json_leaf.hpp"

#include <gtest/gtest.h>

namespace tidewright::intake {
namespace {

// The document and the table of RFC 6901, section 5.
constexpr std::string_view rfc_6901 = R"({
      "foo": ["bar", "baz"],
      "": 0,
      "a/b": 1,
      "c%d": 2,
      "e^f": 3,
      "g|h": 4,
      "i\\j": 5,
      "k\"l": 6,
      " ": 7,
      "m~n": 8
   })";

std::optional<Leaf> at(std::string_view pointer, std::string_view json = rfc_6901) {
  auto found = find_leaves(json, {pointer});
  if (std::holds_alternative<Refused>(found)) return std::nullopt;
  return std::get<0>(found).front();
}

TEST(JsonLeaf, FollowsThePointersOfRfc6901) {
  EXPECT_EQ(at("")->kind, Leaf::Kind::structure);
  EXPECT_EQ(at("/foo")->kind, Leaf::Kind::structure);
  EXPECT_EQ(at("/foo/0")->text, "bar");
  EXPECT_EQ(at("/")->number, 0);
  EXPECT_EQ(at("/a~1b")->number, 1);
  EXPECT_EQ(at("/c%d")->number, 2);
  EXPECT_EQ(at("/e^f")->number, 3);
  EXPECT_EQ(at("/g|h")->number, 4);
  EXPECT_EQ(at("/i\\j")->number, 5);
  EXPECT_EQ(at("/k\"l")->number, 6);
  EXPECT_EQ(at("/ ")->number, 7);
  EXPECT_EQ(at("/m~0n")->number, 8);
}

// RFC 6901, section 4: "~01" is "~1", no leading zeros, and "-" is after the last element;
// section 7: a pointer that leads nowhere is an error of the reader's to define. Here: no data.
TEST(JsonLeaf, LeadsNowhereRatherThanToSomethingElse) {
  EXPECT_EQ(at("/foo/2"), std::nullopt);
  EXPECT_EQ(at("/foo/00"), std::nullopt);
  EXPECT_EQ(at("/foo/-"), std::nullopt);
  EXPECT_EQ(at("/foo/0/x"), std::nullopt);
  EXPECT_EQ(at("/nothing"), std::nullopt);
  EXPECT_EQ(at("foo"), std::nullopt);
  EXPECT_EQ(at("/m~n"), std::nullopt);
  EXPECT_EQ(at("/~01", R"({"~1":5,"/":6})")->number, 5);
}

TEST(JsonLeaf, CountsElementsWhateverTheyHold) {
  const std::string_view json = R"([[1,[2]],{"a":{"b":[3]}},null,true,-4.5])";
  EXPECT_EQ(at("/0/1/0", json)->number, 2);
  EXPECT_EQ(at("/1/a/b/0", json)->number, 3);
  EXPECT_EQ(at("/2", json)->kind, Leaf::Kind::null);
  EXPECT_EQ(at("/3", json)->text, "true");
  EXPECT_EQ(at("/4", json)->number, -4.5);
  EXPECT_EQ(at("", "7")->number, 7);
}

TEST(JsonLeaf, EightLevelsAreRead) {
  EXPECT_EQ(at("/0/0/0/0/0/0/0/0", "[[[[[[[[8]]]]]]]]")->number, 8);
  EXPECT_EQ(std::get<Refused>(find_leaves("[[[[[[[[[9]]]]]]]]]", {""})), Refused::too_deep);
}

}  // namespace
}  // namespace tidewright::intake
