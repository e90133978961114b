#include <fmt/format.h>

#include <algorithm>
#include <span>

#include "config/reader/draft.hpp"

namespace tidewright::config {
namespace {

// The scheme, a host and perhaps port and path; no name or password in between, nothing that could
// end a line.
bool is_address_of(std::string_view text, std::span<const std::string_view> schemes) {
  const auto is_plain = [](char c) { return c > ' ' && c < 0x7f; };
  if (!std::all_of(text.begin(), text.end(), is_plain)) return false;
  return std::any_of(schemes.begin(), schemes.end(), [&](std::string_view scheme) {
    if (!text.starts_with(scheme)) return false;
    const std::string_view rest = text.substr(scheme.size());
    const std::string_view host = rest.substr(0, rest.find_first_of("/?#"));
    return !host.empty() && host.find('@') == host.npos;
  });
}

// One "@" with something on both sides, and nothing that a mail's head could be led astray by.
bool is_mail_address(std::string_view text) {
  const std::size_t at = text.find('@');
  const bool parted = at != text.npos && at > 0 && at + 1 < text.size();
  return parted && text.find('@', at + 1) == text.npos &&
         std::all_of(text.begin(), text.end(), [](char c) {
           return c > ' ' && c < 0x7f &&
                  std::string_view{"<>,;:\"\\()[]"}.find(c) == std::string_view::npos;
         });
}

Alarms alarms(const Section& from) {
  const std::string word = from.text("alarms");
  if (word == "urgent") return Alarms::urgent;
  return word == "soon" ? Alarms::soon : Alarms::all;
}

void read_webhook(const Section& from, Draft& draft) {
  Webhook webhook{from.text("url"), from.text("secret_file"), from.text("ca_file"), alarms(from)};
  constexpr std::array<std::string_view, 2> schemes{"https://", "http://"};
  if (from.told("url") != nullptr && !is_address_of(webhook.url, schemes)) {
    draft.problems.add(from.at("url"),
                       fmt::format("`url` is \"{}\"; expected https:// or http://, a host and "
                                   "perhaps a path, such as \"https://phone.home/alerts\"",
                                   webhook.url),
                       "Who may post is said by secret_file, not by a name in the address.");
  }
  if (from.mentions("ca_file") && webhook.url.starts_with("http://")) {
    draft.problems.add(
        from.at("ca_file"),
        "`ca_file` is given, but the way of `url` is not encrypted; expected https:// "
        "in `url`",
        "Write https:// in url, or take ca_file out.");
  }
  draft.household.alerts.webhook = std::move(webhook);
}

void check_people(const Section& from, const Mail& mail, Draft& draft) {
  const auto check = [&](std::string_view key, const std::string& address) {
    if (is_mail_address(address)) return;
    draft.problems.add(from.at(key),
                       fmt::format("`{}` is \"{}\"; expected a mail address, such as "
                                   "\"ann@home.example\"",
                                   key, address),
                       "The bare address, without the person's name.");
  };
  if (from.told("from") != nullptr) check("from", mail.from);
  for (const std::string& address : mail.to) check("to", address);
}

void read_mail(const Section& from, Draft& draft) {
  Mail mail;
  mail.server = from.text("server");
  mail.username = from.text("username");
  mail.password_file = from.text("password_file");
  mail.from = from.text("from");
  if (const Value* to = from.told("to")) mail.to = to->words;
  mail.ca_file = from.text("ca_file");
  mail.alarms = alarms(from);
  constexpr std::array<std::string_view, 2> schemes{"smtps://", "smtp://"};
  if (from.told("server") != nullptr && !is_address_of(mail.server, schemes)) {
    draft.problems.add(from.at("server"),
                       fmt::format("`server` is \"{}\"; expected smtps:// or smtp:// and a host, "
                                   "such as \"smtps://mail.home\"",
                                   mail.server),
                       "Name and password are keys of their own: username, password_file.");
  }
  needs(draft, from, "username", "password_file", "The mail server asks for both.");
  needs(draft, from, "password_file", "username", "The mail server asks for both.");
  check_people(from, mail, draft);
  draft.household.alerts.mail = std::move(mail);
}

}  // namespace

void read_alerts(Draft& draft) {
  if (draft.alerts) {
    if (const Value* hours = draft.alerts->told("do_not_disturb")) {
      draft.household.alerts.do_not_disturb = room::Hours{hours->from, hours->to};
    }
  }
  if (draft.webhook) read_webhook(*draft.webhook, draft);
  if (draft.mail) read_mail(*draft.mail, draft);
}

}  // namespace tidewright::config
