// What is wrong with the file, gathered while reading goes on.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "config/reader/document.hpp"

namespace tidewright::config {

class Problems {
 public:
  void add(Spot at, std::string what, std::string hint = "") {
    found_.push_back({at.line, at.column, std::move(what), std::move(hint)});
  }
  // The same of a value that nobody may read over a shoulder or in a log.
  void add_secret(Spot at, std::string what, std::string hint) {
    found_.push_back({at.line, at.column, std::move(what), std::move(hint), true});
  }
  // In the order of the file.
  std::vector<Problem> sorted() &&;

 private:
  std::vector<Problem> found_;
};

}  // namespace tidewright::config
