// The household in the making: the checked sections of the file, and what has been made of them.
// Each read_... takes its own section and adds to the household; read.cpp calls them in order.
#pragma once

#include <optional>
#include <vector>

#include "config/household.hpp"
#include "config/reader/section.hpp"

namespace tidewright::config {

struct Draft {
  Problems problems;
  std::optional<Section> file;
  std::optional<Section> broker;
  std::optional<Section> hub;
  std::optional<Section> panel;
  std::optional<Section> alerts;
  std::optional<Section> webhook;
  std::optional<Section> mail;
  std::vector<Section> vats;
  std::optional<Section> mixing_vat;
  std::vector<Section> leaks;
  std::optional<Section> purifier;
  std::vector<Section> temperatures;
  std::vector<Section> actuators;  // beside household.room.actuators, same order
  std::vector<Section> supplies;
  std::vector<Section> rules;

  Household household;
  std::vector<const Section*> instruments;  // beside household.room.instruments, same order
};

void read_broker(Draft&);
void read_hub(Draft&);
void read_panel(Draft&);
void read_alerts(Draft&);  // with webhook and mail
void read_vat(Draft&);
void read_mixing_vat(Draft&);
void read_leaks(Draft&);
void read_temperatures(Draft&);
void read_actuators(Draft&);  // before the purifier, which names one
void read_purifier(Draft&);
void read_supplies(Draft&);
void read_rules(Draft&);

// What one section alone cannot see: names, topics, sizes, and what may run unattended.
void check_together(Draft&);
// The vat's marks stand in order.
void check_marks(Draft&);
// No topic means two things.
void check_topics(Draft&);

// A level as litres, whichever way it is told; none if it or the vat's volume is missing or bad.
std::optional<Litres> litres(const Section& vat, const Value* level);
Duration duration(const Section&, std::string_view key);
// A problem where `key` stands in the section without `other`, without which it is of no use.
void needs(Draft&, const Section&, std::string_view key, std::string_view other,
           std::string_view hint);

}  // namespace tidewright::config
