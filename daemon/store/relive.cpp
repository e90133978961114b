#include "daemon/store/relive.hpp"

#include <fmt/format.h>

#include <utility>

#include "config/reader/reader.hpp"
#include "core/step.hpp"
#include "daemon/store/line.hpp"
#include "daemon/store/state_text.hpp"

namespace tidewright::store {

Relive::Relive(std::optional<room::Room> room, std::function<void(const Moment&)> see,
               std::function<void(const std::string&)> complain)
    : room_is_given_(room.has_value()),
      room_known_(room.has_value()),
      room_(std::move(room).value_or(room::Room{})),
      see_(std::move(see)),
      complain_(std::move(complain)) {}

void Relive::line(std::string_view text) {
  Line line;
  if (const Trouble trouble = parse(text, room_, line)) {
    ++result_.passed_over;
    complain_(fmt::format("line after event {}: {}", sequence_, trouble));
  } else if (const auto* household = std::get_if<HouseholdText>(&line.what)) {
    begin_chapter(household->text);
  } else if (const auto* state = std::get_if<StateText>(&line.what)) {
    meet_state(line.sequence, state->text, state->fresh);
  } else {
    live(line.sequence, std::get<Event>(line.what), line.raw);
  }
}

void Relive::begin_chapter(const std::string& household) {
  if (room_is_given_) return;
  auto understood = config::read(household);
  room_known_ = understood.household.has_value();
  state_known_ = state_known_ && room_known_;
  if (room_known_) {
    room_ = std::move(understood.household->room);
  } else {
    complain_(
        "the household's file of that time is not understood by this version: give one with "
        "--config");
  }
}

void Relive::meet_state(std::uint64_t sequence, const std::string& text, bool fresh) {
  if (!room_known_) return;
  if (!fresh && state_known_ && sequence == sequence_) {
    ++result_.chapters;
    if (to_text(room_, state_) == text) ++result_.chapters_agreed;
  }
  state_known_ = from_text(room_, text, state_);
  sequence_ = sequence;
  if (!state_known_) complain_(fmt::format("the state after event {} cannot be read", sequence));
}

void Relive::live(std::uint64_t sequence, const Event& event, const std::string& raw) {
  if (state_known_ && sequence != sequence_ + 1) {
    const std::uint64_t missing = sequence - sequence_ - 1;
    result_.missing += missing;
    state_known_ = false;
    complain_(fmt::format(
        "{} events are missing before event {}: what follows is passed over up to the next chapter",
        missing, sequence));
  }
  if (!state_known_) {
    ++result_.passed_over;
    return;
  }
  const Instant next = step(room_, state_, event, effects_);
  sequence_ = sequence;
  ++result_.events;
  see_({.room = room_,
        .state = state_,
        .event = event,
        .raw = raw,
        .effects = effects_,
        .next = next});
}

}  // namespace tidewright::store
