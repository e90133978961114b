#include "daemon/commands/correspond.hpp"

#include <fmt/format.h>
#include <pwd.h>
#include <sysexits.h>
#include <unistd.h>

#include <nlohmann/json.hpp>
#include <ostream>
#include <random>
#include <string>
#include <utility>

#include "daemon/commands/exchange.hpp"
#include "daemon/mqtt/access.hpp"

namespace tidewright::commands {
namespace {

struct Answered {
  bool done = false;
  std::string why;
  std::optional<std::uint32_t> token;
};

Answered understood(const std::string& answer) {
  const auto json = nlohmann::json::parse(answer, nullptr, false);
  Answered made;
  if (!json.is_object()) return made;
  made.done = json.value("done", false);
  made.why = json.value("why", "");
  if (json.contains("token")) made.token = json["token"].get<std::uint32_t>();
  return made;
}

std::string fresh_id() {
  std::random_device random;
  return fmt::format("{:08x}{:08x}", random(), random());
}

std::string login_name() {
  const passwd* entry = getpwuid(getuid());  // NOLINT(concurrency-mt-unsafe): one thread so far
  return entry != nullptr ? entry->pw_name : "";
}

// Why nothing came back, as far as it can be seen from here.
std::string silence(const Reach& reach, const std::string& online) {
  const std::string topic = reach.place.base + "/online";
  if (online == "online") {
    return fmt::format(
        "The daemon is online, but nothing answers for the room \"{}\". Is that the room's id in "
        "the household file? Give it with --room or --config.",
        reach.place.room);
  }
  if (online == "offline") {
    return fmt::format("The daemon is not running: {} says offline. Start it and ask again.",
                       topic);
  }
  return fmt::format(
      "No daemon answers: nothing is published on {} at {}. Is the daemon running? Is it this "
      "broker (--broker)? Is the base right (--base)?",
      topic, reach.broker.uri);
}

std::string done_words(const std::string& why) {
  return why == "done" || why.empty() ? "Done." : "Done: " + why;
}

class Conversation {
 public:
  Conversation(const Typed& typed, const Reach& reach, Exchange& exchange, std::ostream& out,
               std::ostream& err)
      : typed_(typed), reach_(reach), exchange_(exchange), out_(out), err_(err) {}

  int hold(const std::string& request, const std::string& id) {
    const auto answer = exchange_.ask(typed_.verb, request, id);
    if (!answer) {
      err_ << silence(reach_, exchange_.online()) << '\n';
      return EX_TEMPFAIL;
    }
    const Answered answered = understood(*answer);
    if (answered.done && answered.token) {
      const std::string next = fresh_id();
      return hold(confirmation(typed_, *answered.token, next), next);
    }
    if (typed_.json) out_ << *answer << '\n';
    if (!typed_.json && answered.done) out_ << done_words(answered.why) << '\n';
    if (!typed_.json && !answered.done) err_ << "Refused: " << answered.why << '\n';
    return answered.done ? EX_OK : EX_NOPERM;
  }

 private:
  const Typed& typed_;
  const Reach& reach_;
  Exchange& exchange_;
  std::ostream& out_;
  std::ostream& err_;
};

}  // namespace

int correspond(const Typed& typed, const Reach& reach, std::ostream& out, std::ostream& err) {
  Typed complete = typed;
  if (complete.who.empty()) complete.who = login_name();
  const std::string id = fresh_id();
  const auto request = as_request(complete, id);
  if (const auto* usage = std::get_if<Usage>(&request)) {
    err << usage->problem;
    return EX_USAGE;
  }
  const auto access = mqtt::access(reach.broker);
  if (const auto* problem = std::get_if<std::string>(&access)) {
    err << *problem << '\n';
    return EX_CONFIG;
  }
  Exchange exchange(std::get<mqtt::Access>(access), reach.place, reach.patience);
  if (const std::string problem = exchange.open(); !problem.empty()) {
    err << fmt::format("The broker at {} cannot be reached: {}\n", reach.broker.uri, problem);
    return EX_UNAVAILABLE;
  }
  return Conversation(complete, reach, exchange, out, err).hold(std::get<std::string>(request), id);
}

}  // namespace tidewright::commands
