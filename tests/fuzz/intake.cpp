// Any bytes at the door: no crash, no undefined behaviour, and what comes out is what is promised.
// The first byte chooses the instrument, the rest is the payload.
#include "daemon/intake/intake.hpp"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

namespace {

using namespace tidewright;

const Instant now{std::chrono::seconds{1'800'000'000}};
constexpr room::InstrumentIndex probe_index = 5;

config::Source source(unsigned choice) {
  config::Source made;
  made.form = static_cast<config::Form>(choice % 4);
  const char* const pointers[] = {"", "/t", "/a/0", "/a~1b"};
  made.pointer = pointers[choice / 3 % 4];
  if ((choice & 0x40U) != 0) made.time_pointer = "/at";
  if ((choice & 0x80U) != 0) made.points = {{-10, 0}, {10, 50}, {100, 60}};
  const char* const names[] = {"", "a", "urn:dev:ow:10e2073a01080063"};
  made.senml_name = names[choice / 4 % 3];
  made.on_words = {"wet", "true"};
  made.off_words = {"dry", "false"};
  return made;
}

void check(bool promised) {
  if (!promised) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const unsigned choice = data[0];
  const std::string_view payload(reinterpret_cast<const char*>(data) + 1, size - 1);
  room::Instrument instrument;
  instrument.quantity = static_cast<room::Quantity>(choice % 10);
  const bool unknown_age = choice % 5 == 0;
  const auto decoded =
      intake::decode(source(choice), instrument, probe_index, {payload, unknown_age},
                     {Duration{0}, std::chrono::minutes{60}}, now);
  if (const auto* reading = std::get_if<Reading>(&decoded)) {
    check(reading->instrument == probe_index);
    check(std::isfinite(reading->value));
    check(reading->taken >= long_ago && reading->taken <= now);
    check(!unknown_age || reading->arrival != Arrival::live);
    check(reading->arrival != Arrival::dated || reading->taken > long_ago);
    check(payload.size() <= intake::payload_bytes_max);
  } else {
    check(!intake::words(std::get<intake::Refused>(decoded)).empty());
  }
  const config::AvailabilityTopic topic{"t", "online", "offline"};
  const auto available = intake::decode(topic, probe_index, payload);
  if (const auto* said = std::get_if<Availability>(&available))
    check(said->instrument == probe_index);
  return 0;
}
