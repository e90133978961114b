// The words in which the file's problems are told: what a value should have looked like.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "config/reader/keys.hpp"
#include "config/reader/quantity.hpp"

namespace tidewright::config {

// "L, mL or gal"; "or" is the word before the last.
std::string listed(std::span<const std::string_view> words, std::string_view last_by);
// The same, each word in double quotes.
std::string quoted_list(std::span<const std::string_view> words, std::string_view last_by);
// "valve | pump | nothing" in its parts.
std::vector<std::string_view> parted(std::string_view choices);
// "; did you mean `volume`?" or nothing.
std::string did_you_mean(std::string_view near, std::string_view quote = "`");

// Whether values of this kind are quantities of that dimension.
bool accepts(Kind, Dimension);
// The units in which the kind may be written, one spelling of each.
std::vector<std::string_view> units_accepted(Kind);
// Those of them that a hint proposes, two at most.
std::vector<std::string_view> usual_units(Kind);
// The same as a list: "L, gal or mL".
std::string units_of(Kind);
// "a volume, such as \"200 L\"": what a value of this row looks like.
std::string expected(const Key&);

}  // namespace tidewright::config
