#include "daemon/intake/json_leaf.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <unordered_set>
#include <utility>

namespace tidewright::intake {
namespace {

using Tokens = std::vector<std::string>;
constexpr int number_too_large = 406;  // the parser's own code

// Receives the parser's events. Each handler returns whether to go on.
class Seeker {
 public:
  explicit Seeker(std::vector<std::optional<Tokens>> wanted)
      : wanted_(std::move(wanted)), found_(wanted_.size()) {}

  std::optional<Refused> refused() const { return refused_; }
  std::vector<std::optional<Leaf>> take() { return std::move(found_); }

  bool null() { return leaf({Leaf::Kind::null, 0, "null"}); }
  bool boolean(bool value) {
    return leaf({Leaf::Kind::boolean, value ? 1.0 : 0.0, value ? "true" : "false"});
  }
  bool number_integer(std::int64_t value) {
    return leaf({Leaf::Kind::number, static_cast<double>(value), std::to_string(value)});
  }
  bool number_unsigned(std::uint64_t value) {
    return leaf({Leaf::Kind::number, static_cast<double>(value), std::to_string(value)});
  }
  bool number_float(double value, const std::string& written) {
    return leaf({Leaf::Kind::number, value, written});
  }
  bool string(const std::string& value) { return leaf({Leaf::Kind::text, 0, value}); }
  bool binary(const nlohmann::json::binary_t& /*never in text*/) {
    return refuse(Refused::not_json);
  }

  bool start_object(std::size_t /*size*/) { return open(false); }
  bool key(const std::string& name) {
    if (!frames_.back().seen.insert(name).second) return refuse(Refused::duplicate_key);
    frames_.back().token = name;
    return true;
  }
  bool end_object() { return close(); }
  bool start_array(std::size_t /*size*/) { return open(true); }
  bool end_array() { return close(); }

  bool parse_error(std::size_t /*position*/, const std::string& /*token*/,
                   const nlohmann::json::exception& error) {
    return refuse(error.id == number_too_large ? Refused::not_finite : Refused::not_json);
  }

 private:
  // An object or array that is open, and the member that is being read.
  struct Frame {
    bool is_array = false;
    std::size_t members = 0;
    std::string token;
    std::unordered_set<std::string> seen;
  };

  bool refuse(Refused why) {
    refused_ = why;
    return false;
  }

  bool open(bool is_array) {
    keep({Leaf::Kind::structure, 0, ""});
    if (frames_.size() == json_depth_max) return refuse(Refused::too_deep);
    frames_.emplace_back();
    frames_.back().is_array = is_array;
    if (is_array) frames_.back().token = "0";
    return true;
  }

  bool close() {
    frames_.pop_back();
    return next();
  }

  bool leaf(const Leaf& value) {
    keep(value);
    return next();
  }

  // One member is complete; in an array the next one is known by its number.
  bool next() {
    if (!frames_.empty() && frames_.back().is_array) {
      frames_.back().token = std::to_string(++frames_.back().members);
    }
    return true;
  }

  void keep(const Leaf& value) {
    for (std::size_t i = 0; i < wanted_.size(); ++i) {
      if (wanted_[i] && here(*wanted_[i])) found_[i] = value;
    }
  }

  bool here(const Tokens& tokens) const {
    return std::equal(frames_.begin(), frames_.end(), tokens.begin(), tokens.end(),
                      [](const Frame& f, const std::string& token) { return f.token == token; });
  }

  std::vector<std::optional<Tokens>> wanted_;
  std::vector<std::optional<Leaf>> found_;
  std::vector<Frame> frames_;
  std::optional<Refused> refused_;
};

}  // namespace

std::optional<Tokens> pointer_tokens(std::string_view pointer) {
  Tokens tokens;
  if (pointer.empty()) return tokens;
  if (pointer.front() != '/') return std::nullopt;
  for (std::size_t i = 0; i < pointer.size(); ++i) {
    if (pointer[i] == '/') {
      tokens.emplace_back();
    } else if (pointer[i] != '~') {
      tokens.back() += pointer[i];
    } else {
      const char escaped = i + 1 < pointer.size() ? pointer[i + 1] : '\0';
      if (escaped != '0' && escaped != '1') return std::nullopt;
      tokens.back() += escaped == '0' ? '~' : '/';
      ++i;
    }
  }
  return tokens;
}

std::variant<std::vector<std::optional<Leaf>>, Refused> find_leaves(
    std::string_view json, const std::vector<std::string_view>& pointers) {
  std::vector<std::optional<Tokens>> wanted;
  wanted.reserve(pointers.size());
  for (std::string_view pointer : pointers) wanted.push_back(pointer_tokens(pointer));
  Seeker seeker(std::move(wanted));
  nlohmann::json::sax_parse(json.begin(), json.end(), &seeker);
  if (seeker.refused()) return *seeker.refused();
  return seeker.take();
}

}  // namespace tidewright::intake
