// The fields of what is told to people: alarms, floods, digests and the last announcements.
#pragma once

#include "core/state/alarm.hpp"
#include "core/state/either.hpp"
#include "core/state/notice.hpp"

namespace tidewright::state {

void fields(auto& visit, Either<Alarm> auto& alarm) {
  visit("active", alarm.active);
  visit("acknowledged", alarm.acknowledged);
  visit("suppression", alarm.suppression);
  visit("occurrence", alarm.occurrence);
  visit("since", alarm.since);
  visit("acknowledged_at", alarm.acknowledged_at);
  visit("announced", alarm.announced);
  visit("shelved_until", alarm.shelved_until);
  visit("chattering", alarm.chattering);
  visit("why", alarm.why);
}

void fields(auto& visit, Either<Flood> auto& flood) { visit("told", flood.told); }

void fields(auto& visit, Either<Digest> auto& digest) {
  visit("told", digest.told);
  visit("made", digest.made);
  visit("made_until_then", digest.made_until_then);
}

void fields(auto& visit, Either<Notice> auto& notice) {
  visit("number", notice.number);
  visit("at", notice.at);
  visit("alarm", notice.alarm);
  visit("occurrence", notice.occurrence);
  visit("event", notice.event);
  visit("why", notice.why);
}

void fields(auto& visit, Either<Notices> auto& notices) {
  visit("last", notices.last);
  visit("items", notices.items);
}

}  // namespace tidewright::state
