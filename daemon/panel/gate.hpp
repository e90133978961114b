// Who may ask and tell over the panel: whoever once gave the household's token. Bounded on every
// side, and slow for whoever guesses. By several threads at once.
#pragma once

#include <array>
#include <chrono>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "daemon/hub/desk.hpp"

namespace tidewright::panel {

// The token in that file, without blanks around it, or what is wrong with the file, for a person.
// What is in it is never repeated.
struct TokenFile {
  std::string token;    // empty: there is none
  std::string trouble;  // empty: it is good, or none is wanted
};
TokenFile read_token(const std::string& file_name);

// Whether both are the same; takes as long whatever differs.
bool same_secret(std::string_view one, std::string_view other);

// What was asked last in a session, and what came of it.
struct Answered {
  std::chrono::steady_clock::time_point at{};
  std::string path;                     // of the request: "measured/product_tds"
  std::string about;                    // HTML
  std::optional<hub::Outcome> outcome;  // none: nobody answered
};

struct Visitor {
  std::string who;
  std::string form;  // the session's own form token: it stands in each of its forms
  std::optional<Answered> last;
};

class Gate {
 public:
  using Steady = std::chrono::steady_clock;
  static constexpr std::size_t token_shortest = 16, token_longest = 128;
  static constexpr std::size_t sessions_most = 16;  // the oldest goes
  static constexpr std::chrono::hours session_lasts{7 * 24};
  static constexpr std::size_t wrong_most = 5;       // tokens in a minute from one address
  static constexpr std::size_t wrong_most_all = 50;  // and from all of them together

  // An empty token lets nobody in.
  explicit Gate(const std::string& token);

  bool exists() const { return exists_; }
  enum class Refusal { wrong, too_often };
  // The new session: 32 characters, not to be guessed. `from`: the caller's address.
  std::variant<std::string, Refusal> enter(std::string_view token, const std::string& from,
                                           const std::string& who, Steady::time_point now);
  // Who that session is; none if it is unknown or over.
  std::optional<Visitor> visitor(std::string_view session, Steady::time_point now) const;
  // Until the next one.
  void keep(std::string_view session, Answered answered);
  void leave(std::string_view session);

 private:
  using Digest = std::array<unsigned char, 32>;
  struct Session {
    Digest id;  // of its text: not even the memory gives it away
    Steady::time_point since;
    Visitor visitor;
  };
  static Digest digest(std::string_view text);
  bool tries_too_often(const std::string& from, Steady::time_point now);

  const bool exists_;
  const Digest token_;
  mutable std::mutex lock_;  // of what follows
  std::vector<Session> sessions_;
  std::vector<std::pair<Steady::time_point, std::string>> wrong_;  // when, and from where
};

}  // namespace tidewright::panel
