#include "daemon/mqtt/report_settings.hpp"

namespace tidewright::mqtt {

ReportSettings plain_settings(const Access& access, const hub::Place& place,
                              const std::string& birth_topic) {
  return {.access = access,
          .client_id = place.base + "-report",
          .root = place.base,
          .presence = {place.base + "/online", "online", "", "offline", "offline"},
          .listens = {place.topic("ask"), place.topic("tell")},
          .tell_topic = place.topic("tell"),
          .birth_topic = birth_topic};
}

// Homie 5: the device's life cycle, the will, and the quality of what is not retained.
ReportSettings homie_settings(const Access& access, const hub::Place& place,
                              const std::string& device) {
  return {.access = access,
          .client_id = place.base + "-homie",
          .root = device,
          .presence = {device + "/$state", "init", "ready", "disconnected", "lost"},
          .listens = {device + "/+/+/set"},
          .tell_topic = {},
          .birth_topic = {},
          .event_quality = 0};
}

}  // namespace tidewright::mqtt
