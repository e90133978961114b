// From an instrument's table to the room's Instrument and the door's Source.
#pragma once

#include <string>

#include "config/reader/draft.hpp"

namespace tidewright::config {

// What the section's place in the file says of the instrument.
struct Described {
  room::Quantity quantity{};
  room::Place place{};
  std::uint8_t subject = 0;
  std::string id;
  std::string where;                  // if the table does not say it
  double vat_litres = 0;              // of a level gauge; 0 = unknown, for the file is wrong there
  std::uint8_t twin_of = no_subject;  // the instrument whose `twin` it is
};

// `section` must outlive the draft's use: its address is kept beside the instrument.
void add_instrument(Draft&, const Section& section, const Described&);

}  // namespace tidewright::config
