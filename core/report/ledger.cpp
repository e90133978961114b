#include "core/report/fields.hpp"
#include "core/report/things.hpp"

namespace tidewright::report {

Thing ledger(const picture::Picture& picture) {
  const state::Ledger& ledger = picture.ledger;
  Fields fields{"ledger", ""};
  fields.add("made_total_l", ledger.made.value);
  if (ledger.fill.under_way) {
    fields.add("fill_gained_l", ledger.fill.gained.value)
        .add("fill_to_go_l", ledger.fill.to_go.value)
        .add("fill_hours", hours(ledger.fill.worked));
  } else {
    fields.unknown("fill_gained_l", "no fill is under way")
        .unknown("fill_to_go_l", "no fill is under way")
        .unknown("fill_hours", "no fill is under way");
  }
  return fields.done();
}

}  // namespace tidewright::report
