// What water changes do to something that is dissolved, such as nitrate: each leaves a share of it,
// and in between more comes. In any unit, as long as it is the same throughout; several things that
// are changed together are reckoned one after the other.
//
// Source: the geometric series, and its limit for many small changes. Exact where the water is well
// mixed and the fraction is of all the water, with that of the sump.
#pragma once

#include "core/water/answer.hpp"

namespace tidewright::water {

// Range: concentrations 0 to 1e6, fraction 0.0001 to 1, gain -1e6 to 1e6.
struct BatchChanges {
  double now;           // before the first change
  double incoming = 0;  // in the new water
  double fraction;      // of the water that is changed each time
  double gain = 0;      // what comes before each change; negative if it is used up
};

// After so many changes, and what it comes to after (and before) each if this goes on for ever.
// Range of times 0 to 100000, whole or not.
Answer<double> after_changes(const BatchChanges& changes, double times);
Answer<double> steady_after_change(const BatchChanges& changes);
Answer<double> steady_before_change(const BatchChanges& changes);

// How many changes bring it to `target`: the next whole number does. Refused if `target` is not
// between what it is and what it comes to: then no number does.
Answer<double> changes_needed(const BatchChanges& changes, double target);

// The fraction of one change that is as good as `times` changes of `fraction`, one after the other.
Answer<double> composed_fraction(double fraction, double times);

// Water that flows in and out all day. Range: fraction 1e-6 to 1000 of the volume a day, the rest
// as above, days 0 to 100000.
struct ContinuousChange {
  double now;
  double incoming = 0;
  double fraction_per_day;
  double gain_per_day = 0;
};
Answer<double> after_days(const ContinuousChange& change, double days);
Answer<double> steady(const ContinuousChange& change);

// Refused as changes_needed.
Answer<double> days_needed(const ContinuousChange& change, double target);

}  // namespace tidewright::water
