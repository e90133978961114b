// Where a person's requests come in and their answers go out. Remembers who asked until core has
// answered. Not for two threads at once: the caller holds a lock or uses one thread.
#pragma once

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "config/household.hpp"
#include "core/effect.hpp"
#include "core/event.hpp"
#include "daemon/hub/message.hpp"
#include "daemon/hub/plain.hpp"
#include "daemon/hub/request.hpp"

namespace tidewright::hub {

// Longer requests are refused unread.
inline constexpr std::size_t request_bytes_max = 4096;

// A message on `<base>/<room>/ask` or `…/tell`.
struct Letter {
  Verb verb{};
  std::string payload;
  bool retained = false;
  // MQTT 5; where it is empty, has wildcards, or is a topic that the household or we use, the
  // answer goes to `<base>/<room>/answer`.
  std::string response_topic;
  std::string correlation;  // MQTT 5 correlation data, sent back as it is
  std::string topic = {};   // on which it came
  // Of the panel, which shows the answer itself; 0: it came over MQTT.
  std::uint64_t question = 0;
};

// What became of a request.
struct Outcome {
  bool done = false;
  std::string why;                     // a sentence without a full stop, or several whole ones
  std::optional<std::uint32_t> token;  // what was armed is confirmed with it
};

struct Reply {
  Message message;
  std::string correlation;
  std::uint64_t question = 0;  // as the letter's; then the message is not to be sent
  Outcome outcome = {};
};

class Desk {
 public:
  // `fresh_token` makes the token of each reset: 100000 to 999999, not to be guessed.
  Desk(const config::Household& household, std::function<std::uint32_t()> fresh_token);

  // An event for core, or at once the reply to a letter that cannot be understood.
  std::variant<Ask, Tell, Reply> take(const Letter& letter, Instant now, const WallClock& wall);

  // The reply to what core answered; `words` are report::words of its reason. None if the letter
  // is long forgotten (64 came after it).
  std::optional<Reply> reply(const Answer& answer, std::string_view words, Instant now,
                             const WallClock& wall);

 private:
  struct Pending {
    std::uint32_t ticket = 0;
    About about;
    std::string response_topic;
    std::string correlation;
    std::uint64_t question = 0;
  };
  Pending& remember(const Letter& letter, const About& about);
  Reply write(const Pending& pending, Outcome outcome, const std::string& at) const;

  const config::Household& household_;
  Place place_;
  std::function<std::uint32_t()> fresh_token_;
  std::uint32_t last_ticket_ = 0;
  std::array<Pending, 64> pending_;
};

}  // namespace tidewright::hub
