// The courier: reads its orders on standard input, tries each letter once, and tells on standard
// output what became of it. Started by the daemon (daemon/alerts/courier), never by a person.
#include <curl/curl.h>
#include <fmt/core.h>
#include <sysexits.h>

#include <csignal>
#include <iostream>
#include <iterator>
#include <set>

#include "daemon/courier/mail.hpp"
#include "daemon/courier/webhook.hpp"
#include "daemon/post/orders.hpp"

namespace tidewright::courier {
namespace {

post::Outcome attempt(const post::Orders& orders, const post::Letter& letter) {
  try {
    if (letter.way == post::Way::webhook && orders.webhook) {
      return deliver(*orders.webhook, letter);
    }
    if (letter.way == post::Way::mail && orders.mail) return deliver(*orders.mail, letter);
    return {letter.notice, letter.way, post::Fate::failed, "nothing is known of this way"};
  } catch (const std::exception& error) {
    return {letter.notice, letter.way, post::Fate::refused, error.what()};
  }
}

// A way that is not open is not tried again with the next letter: order is kept, and time.
int run() {
  const std::string text{std::istreambuf_iterator<char>(std::cin), {}};
  const auto orders = post::orders_of(text);
  if (!orders) {
    fmt::print(stderr, "tidewright-courier: on standard input the daemon's orders are expected.\n");
    return EX_DATAERR;
  }
  curl_global_init(CURL_GLOBAL_DEFAULT);
  std::set<post::Way> not_open;
  for (const post::Letter& letter : orders->letters) {
    if (not_open.contains(letter.way)) continue;
    const post::Outcome outcome = attempt(*orders, letter);
    if (outcome.fate == post::Fate::failed) not_open.insert(letter.way);
    fmt::print("{}", post::to_text(outcome));
    std::fflush(stdout);
  }
  curl_global_cleanup();
  return EX_OK;
}

}  // namespace
}  // namespace tidewright::courier

int main() {
  // A daemon that was killed hears no answer; what it gave us is delivered all the same.
  std::signal(SIGPIPE, SIG_IGN);
  return tidewright::courier::run();
}
