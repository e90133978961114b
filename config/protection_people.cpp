// The cases that are about lines and people rather than about one part of the room.
#include "config/protection_parts.hpp"

namespace tidewright::config {
namespace {

bool is_on_another_machine(const std::string& uri) {
  return uri.find("127.0.0.1") == std::string::npos && uri.find("localhost") == std::string::npos;
}

Case told_without_a_hub(const Alerts& alerts) {
  const std::string happening = "the hub or its phone app is gone";
  if (!alerts.webhook && !alerts.mail) {
    return {happening, "nobody is told: the file has neither [webhook] nor [mail]"};
  }
  const std::string ways = alerts.webhook && alerts.mail ? "webhook and mail"
                           : alerts.webhook              ? "webhook"
                                                         : "mail";
  return {happening, "you are told by " + ways};
}

}  // namespace

void gather_people(const Household& household, Protection& into) {
  const bool has_way = household.alerts.webhook || household.alerts.mail;
  (has_way ? into.had : into.not_had).push_back(told_without_a_hub(household.alerts));
  const std::string& uri = household.broker.uri;
  if (uri.starts_with("mqtt://") && is_on_another_machine(uri)) {
    into.not_had.push_back(
        {"somebody else is in your network",
         "the line to the broker is not encrypted: commands can be read and forged"});
  }
  into.not_had.push_back(
      {"the daemon itself fails",
       "only what works without it helps: the float valve, the pressure switch, a drain in the "
       "floor"});
}

}  // namespace tidewright::config
