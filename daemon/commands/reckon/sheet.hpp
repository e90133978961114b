// Answers of the core put one under the other, for a quantity that gives many of one water.
#pragma once

#include <optional>
#include <utility>

#include "daemon/commands/reckon/quantity.hpp"

namespace tidewright::commands::reckon {

class Sheet {
 public:
  // Puts the answer's value into the line; keeps the first remark, and the first refusal.
  template <class T>
  void add(const water::Answer<T>& answer, Result line) {
    if (!answer) {
      if (!refusal_) refusal_ = refused(*answer.outside());
      return;
    }
    line.value = number(*answer);
    if (!remark_) remark_ = answer.outside();
    results_.push_back(std::move(line));
  }

  // What was added, with what is said of it; or why one of them was refused.
  Outcome under(Reckoned reckoned) {
    if (refusal_) return *std::move(refusal_);
    reckoned.results = std::move(results_);
    reckoned.remark = remark_;
    return reckoned;
  }

 private:
  static double number(double value) { return value; }
  template <class Measure>
  static double number(Measure measure) {
    return measure.value;
  }

  std::vector<Result> results_;
  std::optional<water::Outside> remark_;
  std::optional<Refusal> refusal_;
};

}  // namespace tidewright::commands::reckon
