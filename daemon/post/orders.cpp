#include "daemon/post/orders.hpp"

#include <nlohmann/json.hpp>

namespace tidewright::post {
namespace {

using nlohmann::json;

json value(const config::Webhook& webhook) {
  return {{"url", webhook.url}, {"secret_file", webhook.secret_file}, {"ca_file", webhook.ca_file}};
}

json value(const config::Mail& mail) {
  return {{"server", mail.server}, {"username", mail.username},
          {"from", mail.from},     {"password_file", mail.password_file},
          {"to", mail.to},         {"ca_file", mail.ca_file}};
}

config::Webhook webhook(const json& from) {
  return {from.at("url"), from.at("secret_file"), from.at("ca_file")};
}

config::Mail mail(const json& from) {
  return {from.at("server"), from.at("username"), from.at("password_file"),
          from.at("from"),   from.at("to"),       from.at("ca_file")};
}

// Throws if it names none.
Way way(const json& word) { return way_named(word.get<std::string>()).value(); }

constexpr std::array fates{"delivered", "refused", "failed"};

Fate fate(const json& word) {
  if (word == fates[0]) return Fate::delivered;
  return word == fates[1] ? Fate::refused : Fate::failed;
}

// What another program wrote may be anything.
template <class Make>
auto understood(std::string_view text, Make make) -> std::optional<decltype(make(json{}))> {
  try {
    return make(json::parse(text));
  } catch (const std::exception&) {
    return std::nullopt;
  }
}

}  // namespace

std::string to_text(const Orders& orders) {
  json document{{"letters", json::array()}};
  if (orders.webhook) document["webhook"] = value(*orders.webhook);
  if (orders.mail) document["mail"] = value(*orders.mail);
  for (const Letter& letter : orders.letters) {
    document["letters"].push_back(
        {{"notice", letter.notice}, {"way", name(letter.way)}, {"body", letter.body}});
  }
  return document.dump(-1, ' ', false, json::error_handler_t::replace);
}

std::optional<Orders> orders_of(std::string_view text) {
  return understood(text, [](const json& document) {
    Orders orders;
    if (document.contains("webhook")) orders.webhook = webhook(document.at("webhook"));
    if (document.contains("mail")) orders.mail = mail(document.at("mail"));
    for (const json& each : document.at("letters")) {
      orders.letters.push_back({each.at("notice"), way(each.at("way")), each.at("body")});
    }
    return orders;
  });
}

std::string to_text(const Outcome& outcome) {
  const json line{{"notice", outcome.notice},
                  {"way", name(outcome.way)},
                  {"fate", fates[static_cast<std::size_t>(outcome.fate)]},
                  {"said", outcome.said}};
  return line.dump(-1, ' ', false, json::error_handler_t::replace) + "\n";
}

std::optional<Outcome> outcome_of(std::string_view line) {
  return understood(line, [](const json& from) {
    return Outcome{from.at("notice"), way(from.at("way")), fate(from.at("fate")), from.at("said")};
  });
}

}  // namespace tidewright::post
