// One document for each thing of the room.
#pragma once

#include <string>

#include "core/picture/picture.hpp"
#include "core/report/report.hpp"
#include "core/state/state.hpp"

namespace tidewright::report {

// The room must have a vat; a mixing vat; a purifier; and its lead canister's size must be told.
Thing vat(const picture::Picture&);
Thing mixing_vat(const picture::Picture&);
Thing purifier(const picture::Picture&);
Thing resin(const picture::Picture&);
Thing actuator(const picture::Picture&, room::ActuatorIndex);
Thing alarm(const room::Room&, const State&, room::RuleId);
Thing source(const picture::Picture&, room::InstrumentIndex);
Thing supply(const picture::Picture&, room::SupplyIndex);
Thing ledger(const picture::Picture&);
// Bypasses, and the proof tests with their dates.
Thing protection(const picture::Picture&);
// Where water_balance_off applies.
Thing balance(const picture::Picture&);

// The week's digest: nothing in it is about one alarm alone.
Message digest_message(const room::Room&, const State&);

// "good", "uncertain", "bad".
std::string quality_word(Quality);
// As NAMUR NE 107 names them: "normal", "failure", "check_function" ...
std::string status_word(DeviceStatus);
// Why the signal of an instrument is not good, with its numbers.
Reason signal_reason(const picture::Picture&, room::InstrumentIndex);

}  // namespace tidewright::report
