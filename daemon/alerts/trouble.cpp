#include <fmt/format.h>

#include "daemon/alerts/alerts.hpp"
#include "daemon/post/secret.hpp"
#include "daemon/post/signature.hpp"

namespace tidewright::alerts {
namespace {

std::string unreadable(std::string_view what, const std::string& file) {
  return fmt::format("{} cannot be read from {}.", what, file);
}

bool can_be_read(const std::string& file) { return file.empty() || post::secret_in(file); }

}  // namespace

std::string trouble(const config::Alerts& alerts) {
  if (const auto& webhook = alerts.webhook) {
    if (!can_be_read(webhook->ca_file)) {
      return unreadable("The certificate of the webhook's authority", webhook->ca_file);
    }
    if (!webhook->secret_file.empty()) {
      const auto secret = post::secret_in(webhook->secret_file);
      if (!secret) return unreadable("The webhook's secret", webhook->secret_file);
      if (!post::signing_key(*secret)) {
        return fmt::format(
            "What stands in {} is no webhook's secret; expected whsec_ and 24 to 64 bytes in "
            "base64. Make one: echo whsec_$(openssl rand -base64 32)",
            webhook->secret_file);
      }
    }
  }
  if (const auto& mail = alerts.mail) {
    if (!can_be_read(mail->ca_file)) {
      return unreadable("The certificate of the mail server's authority", mail->ca_file);
    }
    if (!can_be_read(mail->password_file)) {
      return unreadable("The password for mail", mail->password_file);
    }
  }
  return {};
}

}  // namespace tidewright::alerts
