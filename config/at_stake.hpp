// The figures of `check`: minutes and litres until something stops the water. For protection.cpp.
#pragma once

#include <vector>

#include "config/protection.hpp"

namespace tidewright::config {

// What can happen to a room whose purifier is switched, with the worst that comes of it.
std::vector<Stake> at_stake(const room::Room&);
// How long the rated flow takes from mark to mark. Empty without a purifier.
std::vector<Rise> rises(const Household&);

}  // namespace tidewright::config
