// Hands a letter to the household's mail server, over an encrypted line or not at all.
#pragma once

#include <ctime>
#include <string>
#include <vector>

#include "config/household.hpp"
#include "daemon/post/letter.hpp"

namespace tidewright::courier {

// What a mail of the letter says: its head without the lines about its form (RFC 5322), and its
// text. `now` is shown in the zone of this machine.
struct Mail {
  std::vector<std::string> head;
  std::string text;
};
Mail write_mail(const config::Mail& mail, const post::Letter& letter, std::time_t now);

post::Outcome deliver(const config::Mail& mail, const post::Letter& letter);

}  // namespace tidewright::courier
