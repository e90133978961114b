#include "daemon/intake/senml.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>
#include <utility>

namespace tidewright::intake {
namespace {

constexpr double version_known = 10;       // RFC 8428, section 4.4
constexpr double absolute_from = 1 << 28;  // section 4.5.3: seconds, 2**28

// Names are of these letters, and begin with a letter or digit (section 4.5.1).
bool is_name(std::string_view name) {
  const auto alphanumeric = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
  };
  return !name.empty() && alphanumeric(name.front()) &&
         std::all_of(name.begin(), name.end(), [&](char c) {
           return alphanumeric(c) || std::string_view{"-:./_"}.find(c) != std::string_view::npos;
         });
}

// What stands in one record; base fields go on from record to record.
struct Base {
  std::string name;
  std::string unit;
  double time = 0;
  double value = 0;
};
struct Fields {
  std::string name;
  std::optional<std::string> unit;
  double time = 0;
  std::optional<Leaf> value;
};

// Receives the parser's events and resolves each record when it ends.
class Reader {
 public:
  explicit Reader(std::string_view wanted) : wanted_(wanted) {}

  std::variant<std::vector<SenmlRecord>, Refused> take() {
    if (refused_) return *refused_;
    if (!is_pack_) return Refused::not_senml;
    if (found_.empty()) return Refused::nothing_there;
    return std::move(found_);
  }

  bool null() { return scalar({Leaf::Kind::null, 0, "null"}); }
  bool boolean(bool value) {
    return scalar({Leaf::Kind::boolean, value ? 1.0 : 0.0, value ? "true" : "false"});
  }
  bool number_integer(std::int64_t value) {
    return scalar({Leaf::Kind::number, static_cast<double>(value), std::to_string(value)});
  }
  bool number_unsigned(std::uint64_t value) {
    return scalar({Leaf::Kind::number, static_cast<double>(value), std::to_string(value)});
  }
  bool number_float(double value, const std::string& written) {
    return scalar({Leaf::Kind::number, value, written});
  }
  bool string(const std::string& value) { return scalar({Leaf::Kind::text, 0, value}); }
  bool binary(const nlohmann::json::binary_t& /*never in text*/) {
    return refuse(Refused::not_json);
  }
  bool start_object(std::size_t /*size*/) {
    if (depth_ == 0) return refuse(Refused::not_senml);
    if (depth_ == 1) {
      fields_ = {};
      labels_.clear();
    }
    return deeper();
  }
  bool end_object() {
    --depth_;
    return depth_ != 1 || resolve();
  }
  bool start_array(std::size_t /*size*/) {
    if (depth_ == 1) return refuse(Refused::not_senml);
    is_pack_ = true;
    return deeper();
  }
  bool end_array() {
    --depth_;
    return true;
  }
  bool key(const std::string& label) {
    if (depth_ != 2) return true;  // inside the value of a label that we do not know
    if (!labels_.insert(label).second) return refuse(Refused::duplicate_key);
    if (label.ends_with('_')) return refuse(Refused::must_be_understood);
    label_ = label;
    return true;
  }
  bool parse_error(std::size_t /*position*/, const std::string& /*token*/,
                   const nlohmann::json::exception& error) {
    return refuse(error.id == number_too_large ? Refused::not_finite : Refused::not_json);
  }

 private:
  static constexpr int number_too_large = 406;  // the parser's own code

  bool refuse(Refused why) {
    refused_ = why;
    return false;
  }
  bool deeper() { return ++depth_ <= json_depth_max || refuse(Refused::too_deep); }

  bool scalar(const Leaf& leaf) {
    if (depth_ < 2) return refuse(Refused::not_senml);
    if (depth_ > 2) return true;
    const auto text = [&](std::string& into) {
      into = leaf.text;
      return leaf.kind == Leaf::Kind::text || refuse(Refused::not_senml);
    };
    const auto number = [&](double& into) {
      into = leaf.number;
      return leaf.kind == Leaf::Kind::number || refuse(Refused::not_senml);
    };
    if (label_ == "bn") return text(base_.name);
    if (label_ == "bu") return text(base_.unit);
    if (label_ == "bt") return number(base_.time);
    if (label_ == "bv") return number(base_.value);
    if (label_ == "bver") return version(leaf);
    if (label_ == "n") return text(fields_.name);
    if (label_ == "u") return text(fields_.unit.emplace());
    if (label_ == "t") return number(fields_.time);
    return value(leaf);
  }

  bool version(const Leaf& leaf) {
    if (leaf.kind != Leaf::Kind::number) return refuse(Refused::not_senml);
    return leaf.number <= version_known || refuse(Refused::senml_version);
  }

  // One of v, vs, vb; data (vd) and sums (s) are none of our instruments' values.
  bool value(const Leaf& leaf) {
    const bool fits = (label_ == "v" && leaf.kind == Leaf::Kind::number) ||
                      (label_ == "vs" && leaf.kind == Leaf::Kind::text) ||
                      (label_ == "vb" && leaf.kind == Leaf::Kind::boolean);
    const bool known = label_ == "v" || label_ == "vs" || label_ == "vb";
    if (!known) return true;
    if (!fits) return refuse(leaf.kind == Leaf::Kind::null ? Refused::null : Refused::not_senml);
    if (fields_.value) return refuse(Refused::not_senml);  // at most one (section 4.2)
    fields_.value = leaf;
    return true;
  }

  bool resolve() {
    if (!fields_.value) return true;  // base fields alone, or data
    const std::string name = base_.name + fields_.name;
    if (!is_name(name)) return refuse(Refused::not_senml);
    if (wanted_.empty()) {
      if (only_name_.empty()) only_name_ = name;
      if (name != only_name_) return refuse(Refused::several_names);
    } else if (name != wanted_) {
      return true;
    }
    SenmlRecord record;
    record.value = *fields_.value;
    if (record.value.kind == Leaf::Kind::number) record.value.number += base_.value;
    record.unit = fields_.unit.value_or(base_.unit);
    record.seconds = base_.time + fields_.time;
    record.absolute = record.seconds >= absolute_from;
    found_.push_back(std::move(record));
    return true;
  }

  std::string_view wanted_;
  std::string only_name_;
  Base base_;
  Fields fields_;
  std::set<std::string> labels_;
  std::string label_;
  int depth_ = 0;
  bool is_pack_ = false;
  std::vector<SenmlRecord> found_;
  std::optional<Refused> refused_;
};

}  // namespace

std::variant<std::vector<SenmlRecord>, Refused> senml_records(std::string_view json,
                                                              std::string_view name) {
  Reader reader(name);
  nlohmann::json::sax_parse(json.begin(), json.end(), &reader);
  return reader.take();
}

}  // namespace tidewright::intake
