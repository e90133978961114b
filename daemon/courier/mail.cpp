#include "daemon/courier/mail.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <nlohmann/json.hpp>

#include "daemon/courier/transfer.hpp"
#include "daemon/post/secret.hpp"

namespace tidewright::courier {
namespace {

using post::Fate;
using post::Outcome;

constexpr int urgent = 1;

// A head holds plain ASCII; our own titles are, and what is not shall not break it.
std::string plain(std::string text) {
  for (char& c : text) c = c < ' ' || c > '~' ? '?' : c;
  return text;
}

std::string date(std::time_t now) {
  std::tm local{};
  localtime_r(&now, &local);
  std::array<char, 64> text{};
  std::strftime(text.data(), text.size(), "%a, %d %b %Y %H:%M:%S %z", &local);
  return text.data();
}

void configure(Transfer& transfer, const config::Mail& mail, curl_slist* to) {
  CURL* handle = transfer.handle();
  curl_easy_setopt(handle, CURLOPT_USE_SSL, static_cast<long>(CURLUSESSL_ALL));
  curl_easy_setopt(handle, CURLOPT_MAIL_FROM, fmt::format("<{}>", mail.from).c_str());
  curl_easy_setopt(handle, CURLOPT_MAIL_RCPT, to);
  // One address that is gone keeps the alarm from nobody else.
  curl_easy_setopt(handle, CURLOPT_MAIL_RCPT_ALLLOWFAILS, 1L);
}

Outcome outcome_of(const Transfer::Result& result, const post::Letter& letter) {
  if (result.code == CURLE_OK) return {letter.notice, letter.way, Fate::delivered, {}};
  // 5xx to an address or to the letter itself; what is wrong with the log-in is the way's fault.
  const bool of_the_letter = result.status >= 550 && result.code != CURLE_LOGIN_DENIED;
  return {letter.notice, letter.way, of_the_letter ? Fate::refused : Fate::failed, result.said};
}

}  // namespace

Mail write_mail(const config::Mail& mail, const post::Letter& letter, std::time_t now) {
  const auto told = nlohmann::json::parse(letter.body);
  const std::string domain = mail.from.substr(mail.from.find('@') + 1);
  const std::string title = told.at("title");
  Mail written;
  written.head = {
      "From: <" + mail.from + ">", fmt::format("To: <{}>", fmt::join(mail.to, ">, <")),
      "Subject: " + plain(title), "Date: " + date(now),
      fmt::format("Message-ID: <{}@{}>", letter.notice, domain),
      // All of one occurrence stand together in a mail program.
      fmt::format("References: <{}.{}.{}@{}>", told.at("room").get<std::string>(),
                  told.at("alarm").get<std::string>(), told.at("occurrence").get<int>(), domain),
      "Auto-Submitted: auto-generated"};
  if (told.at("priority") == urgent) written.head.emplace_back("Importance: high");
  written.text = fmt::format("{}\n\n{}\n\n{}, {}\n", title, told.at("text").get<std::string>(),
                             told.at("room").get<std::string>(), told.at("at").get<std::string>());
  return written;
}

Outcome deliver(const config::Mail& mail, const post::Letter& letter) {
  Transfer transfer(mail.server, mail.ca_file);
  curl_slist* to = nullptr;
  for (const std::string& address : mail.to) {
    to = curl_slist_append(to, fmt::format("<{}>", address).c_str());
  }
  configure(transfer, mail, to);
  Outcome outcome{letter.notice, letter.way, Fate::failed, {}};
  const auto password = post::secret_in(mail.password_file);
  if (!mail.password_file.empty() && !password) {
    outcome.said = fmt::format("the password in {} cannot be read", mail.password_file);
  } else {
    if (password) {
      curl_easy_setopt(transfer.handle(), CURLOPT_USERNAME, mail.username.c_str());
      curl_easy_setopt(transfer.handle(), CURLOPT_PASSWORD, password->c_str());
    }
    const Mail written = write_mail(mail, letter, std::time(nullptr));
    for (const std::string& line : written.head) transfer.add_head(line);
    curl_mime* form = curl_mime_init(transfer.handle());
    curl_mimepart* part = curl_mime_addpart(form);
    curl_mime_data(part, written.text.c_str(), written.text.size());
    curl_mime_type(part, "text/plain; charset=utf-8");
    curl_mime_encoder(part, "quoted-printable");
    curl_easy_setopt(transfer.handle(), CURLOPT_MIMEPOST, form);
    outcome = outcome_of(transfer.run(), letter);
    curl_mime_free(form);
  }
  curl_slist_free_all(to);
  return outcome;
}

}  // namespace tidewright::courier
