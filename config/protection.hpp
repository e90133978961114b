// What a household's file protects, what it does not, and what is then at stake: the second half of
// `tidewright check`. Pure: from the file alone, without a look at the real room.
#pragma once

#include <string>
#include <vector>

#include "config/household.hpp"

namespace tidewright::config {

// "If <happening>: <outcome>". Read aloud, each is a sentence.
struct Case {
  std::string happening;
  std::string outcome;
};

struct Stake {
  std::string happening;
  Duration lasting{0};  // without protection, at most
  Litres litres;        // loose in that time, at most
};

// From one mark of the vat to the next one above it.
struct Rise {
  Mark from;
  Mark to;
  Duration at_rated_flow{0};
};

struct Protection {
  std::vector<Case> had;
  std::vector<Case> not_had;
  std::vector<Stake> at_stake;
  std::vector<Rise> rises;
  std::vector<std::string> alarms;      // names of the rules that this room can raise
  std::vector<std::string> alarms_not;  // and of those that it cannot
};

Protection protection(const Household&);

// As a person reads it, with a final newline.
std::string words(const Protection&, const Household&);

// Feed water taken in for each litre of product, where no meter says it: a recovery of 25 %
// (common practice, no source). A leak before the membrane is as fast as this.
inline constexpr double feed_per_product = 4;

}  // namespace tidewright::config
