#include "daemon/panel/gate.hpp"

#include <fmt/format.h>
#include <openssl/crypto.h>
#include <openssl/rand.h>
#include <openssl/sha.h>

#include <algorithm>
#include <stdexcept>

#include "daemon/post/secret.hpp"

namespace tidewright::panel {
namespace {

// 128 bits of chance.
std::string fresh_secret() {
  std::array<unsigned char, 16> bytes{};
  if (RAND_bytes(bytes.data(), bytes.size()) != 1) throw std::runtime_error("no random bytes");
  std::string text;
  for (const unsigned char byte : bytes) text += fmt::format("{:02x}", byte);
  return text;
}

std::string trimmed(const std::string& text) {
  constexpr std::string_view blanks = " \t\r\n";
  const std::size_t first = text.find_first_not_of(blanks);
  return first == text.npos ? "" : text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

}  // namespace

TokenFile read_token(const std::string& file_name) {
  if (file_name.empty()) return {};
  constexpr std::string_view then = "The panel can only be looked at.";
  const auto line = post::secret_in(file_name);
  if (!line) {
    return {"", fmt::format("The panel's token cannot be read from {}. {}", file_name, then)};
  }
  TokenFile found{trimmed(*line), ""};
  const std::size_t size = found.token.size();
  if (size >= Gate::token_shortest && size <= Gate::token_longest) return found;
  return {"", fmt::format("The panel's token in {} has {} characters; expected {} to {} in its "
                          "first line. {}",
                          file_name, size, Gate::token_shortest, Gate::token_longest, then)};
}

// Compared as digests: as long whatever was given, and in the same time.
Gate::Digest Gate::digest(std::string_view text) {
  Digest digest{};
  SHA256(reinterpret_cast<const unsigned char*>(text.data()), text.size(), digest.data());
  return digest;
}

bool same_secret(std::string_view one, std::string_view other) {
  return one.size() == other.size() && CRYPTO_memcmp(one.data(), other.data(), one.size()) == 0;
}

Gate::Gate(const std::string& token) : exists_(!token.empty()), token_(digest(token)) {}

bool Gate::tries_too_often(const std::string& from, Steady::time_point now) {
  std::erase_if(wrong_,
                [&](const auto& one) { return now - one.first >= std::chrono::minutes{1}; });
  const auto of_this = std::count_if(wrong_.begin(), wrong_.end(),
                                     [&](const auto& one) { return one.second == from; });
  return wrong_.size() >= wrong_most_all || of_this >= static_cast<std::ptrdiff_t>(wrong_most);
}

std::variant<std::string, Gate::Refusal> Gate::enter(std::string_view token,
                                                     const std::string& from,
                                                     const std::string& who,
                                                     Steady::time_point now) {
  const std::lock_guard guard(lock_);
  if (tries_too_often(from, now)) return Refusal::too_often;
  const Digest given = digest(token);
  if (!exists_ || CRYPTO_memcmp(given.data(), token_.data(), given.size()) != 0) {
    wrong_.emplace_back(now, from);
    return Refusal::wrong;
  }
  if (sessions_.size() >= sessions_most) sessions_.erase(sessions_.begin());
  std::string session = fresh_secret();
  sessions_.push_back({digest(session), now, {who, fresh_secret(), std::nullopt}});
  return session;
}

std::optional<Visitor> Gate::visitor(std::string_view session, Steady::time_point now) const {
  const Digest given = digest(session);
  const std::lock_guard guard(lock_);
  for (const Session& one : sessions_) {
    const bool same = CRYPTO_memcmp(given.data(), one.id.data(), given.size()) == 0;
    if (same && now - one.since < session_lasts) return one.visitor;
  }
  return std::nullopt;
}

void Gate::keep(std::string_view session, Answered answered) {
  const Digest given = digest(session);
  const std::lock_guard guard(lock_);
  const auto found = std::find_if(sessions_.begin(), sessions_.end(),
                                  [&](const Session& one) { return one.id == given; });
  if (found != sessions_.end()) found->visitor.last = std::move(answered);
}

void Gate::leave(std::string_view session) {
  const Digest given = digest(session);
  const std::lock_guard guard(lock_);
  std::erase_if(sessions_, [&](const Session& one) { return one.id == given; });
}

}  // namespace tidewright::panel
