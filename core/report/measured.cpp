#include "core/report/measured.hpp"

#include "core/report/things.hpp"

namespace tidewright::report {

void add_measured(const picture::Picture& picture, const std::string& name,
                  std::optional<room::InstrumentIndex> meter, std::optional<double> value,
                  Fields& fields) {
  if (!meter) {
    fields.unknown(name, "there is no meter").unknown(name + "_status", "there is no meter");
    return;
  }
  fields.add_if(name, value, words(picture.room, signal_reason(picture, *meter)))
      .add(name + "_status", status_word(picture.signals[*meter].status));
}

std::optional<double> good_value(const picture::Picture& picture,
                                 std::optional<room::InstrumentIndex> meter) {
  if (!meter || picture.signals[*meter].quality != Quality::good) return std::nullopt;
  return picture.signals[*meter].value;
}

}  // namespace tidewright::report
