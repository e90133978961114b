#include "core/report/fields.hpp"
#include "core/report/measured.hpp"
#include "core/report/phrases.hpp"
#include "core/report/readiness.hpp"
#include "core/report/things.hpp"
#include "core/signal/ruling.hpp"
#include "core/signal/water_meter.hpp"

namespace tidewright::report {
namespace {

using picture::Picture;
using room::Place;
using room::Quantity;

void add_solids(const Picture& picture, Place place, const std::string& name, Fields& fields) {
  const auto meter =
      signal::ruling(picture.room, picture.signals, Quantity::dissolved_solids, place);
  const std::optional<double> value = good_value(picture, meter);
  add_measured(picture, name, meter, value, fields);
}

void add_flow(const Picture& picture, Place place, const std::string& name, Fields& fields) {
  const auto meter = signal::water_meter(picture.room, picture.signals, place);
  const auto flow = picture::flow(picture, place);
  add_measured(picture, name, meter, flow ? std::optional{flow->value} : std::nullopt, fields);
}

// Product of all that leaves the membrane, while it runs.
std::optional<double> recovery(const Picture& picture) {
  const auto product = picture::flow(picture, Place::product);
  const auto concentrate = picture::flow(picture, Place::concentrate);
  if (!picture.working || !product || !concentrate) return std::nullopt;
  const double all = product->value + concentrate->value;
  if (all <= 0) return std::nullopt;
  return product->value / all;
}

std::string rejection_why(const Picture& picture) {
  if (!room::find(picture.room, Quantity::dissolved_solids, Place::permeate)) {
    return "it needs a meter between membrane and resin: the product says nothing of the membrane";
  }
  return "it needs a good feed reading and settled running";
}

// The gauge's rate, as it would be with feed water of 25 degrees.
std::optional<double> flow_at_25c(const Picture& picture) {
  const double rated = picture.room.purifier->rated.value;
  const bool measured = picture.working && picture.ledger.level.rate.value > 0;
  if (!measured || !picture.temperature_known || picture.flow_expected.value <= 0) {
    return std::nullopt;
  }
  return picture.ledger.level.rate.value * rated / picture.flow_expected.value;
}

}  // namespace

Thing purifier(const Picture& picture) {
  Fields fields{"purifier", ""};
  const std::string why =
      picture.driving ? words(picture.room, picture.drives[*picture.driving].why) : std::string{};
  if (!picture.driving) {
    fields.unknown("state", "the daemon does not switch it and cannot see whether it runs");
  } else {
    fields.add("state", std::string(picture.working ? "running" : "resting")).add("why", why);
  }
  add_solids(picture, Place::feed, "feed_tds_ppm", fields);
  add_solids(picture, Place::permeate, "permeate_tds_ppm", fields);
  add_solids(picture, Place::lead_outlet, "lead_outlet_tds_ppm", fields);
  add_solids(picture, Place::product, "product_tds_ppm", fields);
  const auto& product = picture.product;
  fields.add_if("product_judged_ppm", product ? std::optional{product->ppm.value} : std::nullopt,
                "not enough settled running yet");
  const auto& rejection = picture.rejection;
  fields.add_if("rejection_percent", rejection ? std::optional{100 * *rejection} : std::nullopt,
                rejection_why(picture));
  add_flow(picture, Place::feed, "feed_flow_l_h", fields);
  add_flow(picture, Place::product, "product_flow_l_h", fields);
  add_flow(picture, Place::concentrate, "concentrate_flow_l_h", fields);
  const auto pressure =
      signal::ruling(picture.room, picture.signals, Quantity::pressure, Place::feed);
  add_measured(picture, "feed_pressure_bar", pressure, good_value(picture, pressure), fields);
  const auto recovered = recovery(picture);
  fields.add_if("recovery_percent", recovered ? std::optional{100 * *recovered} : std::nullopt,
                "it needs running, and meters for product and concentrate flow");
  fields.add_if("flow_at_25c_l_h", flow_at_25c(picture),
                "it needs a running fill that moves the gauge, and the water's temperature");
  return fields.done();
}

}  // namespace tidewright::report
