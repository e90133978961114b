// Small pieces of language that every sentence of the report is made of.
#pragma once

#include <string>
#include <string_view>

#include "core/base/instant.hpp"
#include "core/room/room.hpp"

namespace tidewright::report {

// At most one decimal, none from 100 on: "96.2", "95", "1013".
std::string number(double);
// As a person would say it: "45 s", "12 min", "3 h 20 min", "4 days".
std::string lasting(Duration);
// The same of a time that still grows, in whole minutes: what is published of it changes at most
// once a minute.
std::string growing(Duration);
// "the leak sensor (the floor by the drain)", "the vat gauge".
std::string instrument_words(const room::Room&, std::uint8_t index);
// "the booster pump", or as the file calls it.
std::string actuator_words(const room::Room&, std::uint8_t index);
// "salt", as the file calls it.
std::string supply_words(const room::Room&, std::uint8_t index);
// "pure vat".
std::string vat_words(const room::Room&);
// "L", "ppm"; empty for a switch.
std::string_view unit(room::Quantity);
// With a capital letter and a full stop, if there is any text.
std::string sentence(std::string);
// "14:05" in the household's own time.
std::string clock_time(Instant, const WallClock&);
// "2026-03-01" in the household's own time: for what is known to a day.
std::string date(Instant, const WallClock&);

}  // namespace tidewright::report
