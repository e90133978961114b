#include "daemon/post/signature.hpp"

#include <fmt/format.h>
#include <openssl/evp.h>
#include <openssl/hmac.h>

#include <array>
#include <vector>

namespace tidewright::post {
namespace {

std::string base64(const unsigned char* bytes, std::size_t count) {
  std::string text(4 * ((count + 2) / 3) + 1, '\0');
  const int length = EVP_EncodeBlock(reinterpret_cast<unsigned char*>(text.data()), bytes,
                                     static_cast<int>(count));
  text.resize(static_cast<std::size_t>(length));
  return text;
}

// None if it is no base64 with its padding.
std::optional<std::string> from_base64(std::string_view text) {
  if (text.empty() || text.size() % 4 != 0) return std::nullopt;
  std::vector<unsigned char> bytes(text.size());
  const int length =
      EVP_DecodeBlock(bytes.data(), reinterpret_cast<const unsigned char*>(text.data()),
                      static_cast<int>(text.size()));
  if (length < 0) return std::nullopt;
  const std::size_t padding = text.ends_with("==") ? 2 : text.ends_with("=") ? 1 : 0;
  return std::string(bytes.begin(), bytes.begin() + length - static_cast<long>(padding));
}

}  // namespace

std::optional<std::string> signing_key(std::string_view secret) {
  constexpr std::string_view prefix = "whsec_";
  constexpr std::size_t shortest = 24, longest = 64;
  if (!secret.starts_with(prefix)) return std::nullopt;
  auto key = from_base64(secret.substr(prefix.size()));
  if (!key || key->size() < shortest || key->size() > longest) return std::nullopt;
  return key;
}

std::string signature(std::string_view key, std::string_view id, std::int64_t unix_seconds,
                      std::string_view body) {
  const std::string content = fmt::format("{}.{}.{}", id, unix_seconds, body);
  std::array<unsigned char, EVP_MAX_MD_SIZE> digest{};
  unsigned int size = 0;
  HMAC(EVP_sha256(), key.data(), static_cast<int>(key.size()),
       reinterpret_cast<const unsigned char*>(content.data()), content.size(), digest.data(),
       &size);
  return "v1," + base64(digest.data(), size);
}

}  // namespace tidewright::post
