#include "daemon/commands/reckon/parameters.hpp"

#include <optional>
#include <sstream>

namespace tidewright::commands::reckon {
namespace {

// Numbers with `separator` between them and nothing else; none if that is not what stands there.
std::optional<std::vector<double>> numbers(const std::string& text, char separator) {
  std::vector<double> all;
  std::istringstream in(text);
  for (std::string one; std::getline(in, one, separator);) {
    const auto value = read_number(one);
    if (!value) return std::nullopt;
    all.push_back(*value);
  }
  return all;
}

bool is_name(const std::string& text) {
  return !text.empty() &&
         text.find_first_not_of("abcdefghijklmnopqrstuvwxyz_0123456789") == std::string::npos;
}

}  // namespace

std::variant<std::vector<Parameter>, Refusal> read_parameters(const std::string& text) {
  std::vector<Parameter> all;
  std::istringstream in(text);
  for (std::string one; in >> one;) {
    const std::size_t equals = one.find('=');
    const std::string name = one.substr(0, equals);
    const auto values =
        equals == std::string::npos ? std::nullopt : numbers(one.substr(equals + 1), ',');
    if (!is_name(name) || !values || values->empty() || values->size() > 3) {
      return unknown("--parameters", "`" + one + "`", "NAME=NOW,NEW,GAIN; small letters, points",
                     "numbers 0 to 1e6", R"(Type it as here: "nitrate=40,0,2 phosphate=0.2")");
    }
    all.push_back({name, values->at(0), values->size() > 1 ? values->at(1) : 0,
                   values->size() > 2 ? values->at(2) : 0});
  }
  if (all.empty()) {
    return missing("--parameters", "NAME=NOW,NEW,GAIN",
                   R"(Type it as here: "nitrate=40,0,2 phosphate=0.2")");
  }
  return all;
}

std::variant<std::vector<TypedPoint>, Refusal> read_points(const std::string& text) {
  std::vector<TypedPoint> all;
  std::istringstream in(text);
  for (std::string one; in >> one;) {
    const auto values = numbers(one, ':');
    if (!values || values->size() != 2) {
      return unknown("--points", "`" + one + "`", "DEPTH:LITRES, metres and litres", "",
                     R"(Type them from the lowest up, as here: "0:0 0.1:12.5 0.4:55")");
    }
    all.push_back({values->at(0), values->at(1)});
  }
  return all;
}

}  // namespace tidewright::commands::reckon
