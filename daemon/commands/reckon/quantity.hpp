// What `tidewright reckon` can reckon: a quantity is one file, which says what it needs and what it
// answers, and one row in table.cpp.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/water/answer.hpp"
#include "daemon/commands/reckon/unit.hpp"

namespace tidewright::commands::reckon {

// To which limit a measured number is known: a fraction of it, and so much in its metric unit.
// Taken as rectangular (JCGM 100:2008 section 4.3.7). Known exactly, as a wish is, if both are 0.
struct Known {
  double fraction = 0;
  double absolute = 0;

  bool exactly() const { return fraction == 0 && absolute == 0; }
};

// What is typed. Its name is stem and unit: "volume" in litres is --volume-l, or --volume-gal.
struct Option {
  std::string_view stem;
  Unit unit;
  std::string_view help;
  double low = 0;  // allowed, metric; of a text: not looked at
  double high = 0;
  bool required = false;
  Known known{};
  std::optional<double> otherwise{};  // metric, taken where it was left out
};

// Its metric name without the dashes: "volume-l".
std::string option_key(const Option& option);

// What was not taken, for a person. Numbers of the core that are refused come as 65 (EX_DATAERR),
// what was typed wrongly as 64 (EX_USAGE).
struct Refusal {
  std::string where;  // "--temperature-c"
  std::string found;
  std::string expected;
  std::string allowed;
  std::string remedy;
  int exit_code;
};

// What was typed, by the option's metric name without its dashes: "volume-l" is litres, also where
// --volume-gal was typed.
class Inputs {
 public:
  void set(const std::string& option, double metric) { numbers_[option] = metric; }
  void set(const std::string& option, std::string text) { texts_[option] = std::move(text); }
  void set_otherwise(const std::string& option, double metric) { otherwise_[option] = metric; }
  void set_limit(const std::string& option, double metric) { limits_[option] = metric; }
  void set_customary() { customary_ = true; }

  // Whether it was typed.
  bool has(std::string_view option) const;
  // Requires has(option), or an option that has an `otherwise`.
  double operator[](std::string_view option) const;
  double value_or(std::string_view option, double otherwise) const;
  std::string text_or(std::string_view option, std::string_view otherwise) const;
  // To which limit the person knows it; none if that was not typed.
  std::optional<double> limit(std::string_view option) const;
  // Whether any number was typed in a customary unit: then they are shown, too.
  bool customary() const { return customary_; }

 private:
  std::map<std::string, double, std::less<>> numbers_;
  std::map<std::string, double, std::less<>> otherwise_;
  std::map<std::string, double, std::less<>> limits_;
  std::map<std::string, std::string, std::less<>> texts_;
  bool customary_ = false;
};

// One number, or word, of the answer.
struct Result {
  std::string key;    // with its unit: "final_volume_l"
  std::string label;  // "final volume"
  std::variant<double, std::string> value;
  Unit unit = Unit::none;
  int decimals = 2;
  std::optional<double> uncertainty{};  // expanded, k = 2
};

struct Reckoned {
  std::vector<Result> results;
  std::string formula;
  std::string source;
  std::string sureness;  // of the formula; what the inputs' limits do to it is added for all alike
  // What the formula was carried beyond.
  std::optional<water::Outside> remark{};
  std::vector<std::string> hints{};
  std::vector<std::string> cautions{};
};

using Outcome = std::variant<Reckoned, Refusal>;

struct Quantity {
  const char* name;
  const char* summary;
  const char* example;
  std::span<const Option> options;
  Outcome (*reckon)(const Inputs& inputs);
};

std::span<const Quantity* const> quantities();

// A number of the core's was refused.
Refusal refused(const water::Outside& outside);
// Of several ways none was typed, or one is not complete: "--temperature-c or --temperature-f".
Refusal missing(std::string where, std::string expected, std::string remedy);
// A text is none of those that are allowed.
Refusal unknown(std::string where, std::string found, std::string expected, std::string allowed,
                std::string remedy);

}  // namespace tidewright::commands::reckon
