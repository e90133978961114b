#include "daemon/hub/desk.hpp"

#include <algorithm>
#include <utility>

#include "core/report/report.hpp"
#include "daemon/hub/json_text.hpp"
#include "daemon/hub/request_kinds.hpp"

namespace tidewright::hub {
namespace {

std::string body(const About& about, const Outcome& outcome, const std::string& at) {
  ObjectText object;
  object.add("at", as_json(at)).add(verb_name(about.verb), as_json(about.what));
  if (!about.id.empty()) object.add("id", as_json(about.id));
  object.add("done", outcome.done ? "true" : "false").add("why", as_json(outcome.why));
  if (outcome.token) object.add("token", std::to_string(*outcome.token));
  return object.closed();
}

// Whether an answer may go there: a topic without wildcards that no instrument, actuator or
// document of ours uses. The daemon's rights at the broker are not the asker's.
bool is_free(std::string_view topic, const config::Household& household) {
  constexpr std::size_t longest = 512;
  if (topic.empty() || topic.size() > longest) return false;
  if (topic.find_first_of(std::string_view("+#$\0", 4)) != std::string_view::npos) return false;
  if (topic.starts_with(household.base + "/") || topic == household.heartbeat) return false;
  const auto is_source = [&](const config::Source& source) {
    return source.topic == topic || (source.availability && source.availability->topic == topic);
  };
  const auto is_outlet = [&](const config::Outlet& outlet) { return outlet.topic == topic; };
  return std::none_of(household.sources.begin(), household.sources.end(), is_source) &&
         std::none_of(household.outlets.begin(), household.outlets.end(), is_outlet);
}

}  // namespace

Desk::Desk(const config::Household& household, std::function<std::uint32_t()> fresh_token)
    : household_(household),
      place_{household.base, household.room.id},
      fresh_token_(std::move(fresh_token)) {}

std::variant<Ask, Tell, Reply> Desk::take(const Letter& letter, Instant now,
                                          const WallClock& wall) {
  Request request{{letter.verb, "", ""}, std::string{}};
  if (letter.retained) {
    request.content =
        "A retained request is of unknown age and was not carried out. Publish it without the "
        "retain flag.";
  } else if (letter.payload.size() > request_bytes_max) {
    request.content = "The request is longer than 4096 bytes.";
  } else {
    request = read_request(letter.verb, letter.payload, household_);
  }
  if (const auto* refusal = std::get_if<std::string>(&request.content)) {
    const Pending pending{0, request.about, letter.response_topic, letter.correlation,
                          letter.question};
    return write(pending, {.done = false, .why = *refusal, .token = {}},
                 report::wall_time(now, wall));
  }
  const std::uint32_t ticket = remember(letter, request.about).ticket;
  if (auto* tell = std::get_if<Tell>(&request.content)) {
    tell->ticket = ticket;
    return *tell;
  }
  Ask ask = std::get<Ask>(request.content);
  ask.ticket = ticket;
  if (ask.kind == AskKind::reset || ask.kind == AskKind::bypass) ask.token = fresh_token_();
  return ask;
}

std::optional<Reply> Desk::reply(const Answer& answer, std::string_view words, Instant now,
                                 const WallClock& wall) {
  Pending& pending = pending_[answer.ticket % pending_.size()];
  if (answer.ticket == 0 || pending.ticket != answer.ticket) return std::nullopt;
  Outcome outcome{.done = answer.done, .why = std::string(words), .token = {}};
  const bool armed = answer.why.why == Why::armed || answer.why.why == Why::bypass_armed;
  if (armed) outcome.token = static_cast<std::uint32_t>(answer.why.numbers[0]);
  Reply reply = write(pending, std::move(outcome), report::wall_time(now, wall));
  pending = {};
  return reply;
}

Desk::Pending& Desk::remember(const Letter& letter, const About& about) {
  if (++last_ticket_ == 0) ++last_ticket_;
  Pending& pending = pending_[last_ticket_ % pending_.size()];
  pending = {last_ticket_, about, letter.response_topic, letter.correlation, letter.question};
  return pending;
}

Reply Desk::write(const Pending& pending, Outcome outcome, const std::string& at) const {
  const bool elsewhere = is_free(pending.response_topic, household_);
  const std::string topic = elsewhere ? pending.response_topic : place_.topic("answer");
  std::string text = body(pending.about, outcome, at);
  return {
      {topic, std::move(text), false}, pending.correlation, pending.question, std::move(outcome)};
}

}  // namespace tidewright::hub
