// How a line that publishes presents itself: one for all that is ours and for hubs by discovery,
// one for Homie, whose device has a will of its own, and a connection has but one.
#pragma once

#include <string>
#include <vector>

#include "daemon/hub/plain.hpp"
#include "daemon/mqtt/access.hpp"

namespace tidewright::mqtt {

// What is said, retained, on `topic` of whether we are there.
struct Presence {
  std::string topic;
  std::string begin;  // first of all after each connect
  std::string ready;  // once everything has been published since; empty: nothing
  std::string leave;
  std::string lost;  // the will
};

struct ReportSettings {
  Access access;
  std::string client_id;
  std::string root;  // everything of ours is below it
  Presence presence;
  std::vector<std::string> listens;  // filters of people's requests
  std::string tell_topic;            // what comes there is a tell, all else an ask
  std::string birth_topic;           // on which a hub says `online`; may be empty
  int event_quality = 1;             // of what is not retained
};

ReportSettings plain_settings(const Access& access, const hub::Place& place,
                              const std::string& birth_topic);
// `device`: `homie/5/<id>`.
ReportSettings homie_settings(const Access& access, const hub::Place& place,
                              const std::string& device);

}  // namespace tidewright::mqtt
