#include "daemon/courier/webhook.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <ctime>

#include "daemon/courier/transfer.hpp"
#include "daemon/post/secret.hpp"
#include "daemon/post/signature.hpp"

namespace tidewright::courier {
namespace {

using post::Fate;
using post::Outcome;

// What a receiver says of this very letter, and would say again.
bool is_refusal(long status) {
  constexpr std::array<long, 5> of_the_letter{400, 406, 413, 415, 422};
  return std::find(of_the_letter.begin(), of_the_letter.end(), status) != of_the_letter.end();
}

// Empty if the household names no secret; none if it cannot be used.
std::optional<std::string> signed_by(const config::Webhook& webhook, const std::string& id,
                                     std::int64_t now, const std::string& body) {
  if (webhook.secret_file.empty()) return std::string{};
  const auto secret = post::secret_in(webhook.secret_file);
  const auto key = secret ? post::signing_key(*secret) : std::nullopt;
  if (!key) return std::nullopt;
  return post::signature(*key, id, now, body);
}

}  // namespace

Outcome deliver(const config::Webhook& webhook, const post::Letter& letter) {
  Outcome outcome{letter.notice, letter.way, Fate::failed, {}};
  const std::int64_t now = std::time(nullptr);
  const auto signature = signed_by(webhook, letter.notice, now, letter.body);
  if (!signature) {
    outcome.said = fmt::format("the secret in {} cannot be used", webhook.secret_file);
    return outcome;
  }
  Transfer transfer(webhook.url, webhook.ca_file);
  transfer.add_head("content-type: application/json");
  transfer.add_head("webhook-id: " + letter.notice);
  transfer.add_head(fmt::format("webhook-timestamp: {}", now));
  if (!signature->empty()) transfer.add_head("webhook-signature: " + *signature);
  curl_easy_setopt(transfer.handle(), CURLOPT_POSTFIELDS, letter.body.c_str());
  curl_easy_setopt(transfer.handle(), CURLOPT_POSTFIELDSIZE, static_cast<long>(letter.body.size()));
  const Transfer::Result result = transfer.run();
  if (result.code != CURLE_OK) {
    outcome.said = result.said;
  } else if (result.status >= 200 && result.status < 300) {
    outcome.fate = Fate::delivered;
  } else {
    outcome.fate = is_refusal(result.status) ? Fate::refused : Fate::failed;
    outcome.said = fmt::format("the receiver answers {}", result.status);
  }
  return outcome;
}

}  // namespace tidewright::courier
