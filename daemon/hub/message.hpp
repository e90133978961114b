// What is published on the report line, as data. A convention (hub/plain) makes messages of a
// report; the daemon publishes the difference of two sets.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace tidewright::hub {

struct Message {
  std::string topic;
  std::string payload;
  bool retained = true;
  // The payload before here only tells when it was made. A message that differs in nothing else
  // is not published again.
  std::size_t content_from = 0;
  friend bool operator==(const Message&, const Message&) = default;
};

// What must be published so that a broker that holds `before` holds `after`: the messages that are
// new or differ in content, in their order, then an empty retained one for each topic that is gone
// and was not empty before.
// `before` empty gives all of `after`: what is due after every connect.
std::vector<Message> changes(const std::vector<Message>& before, const std::vector<Message>& after);

}  // namespace tidewright::hub
