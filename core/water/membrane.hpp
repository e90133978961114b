// Reverse-osmosis membrane: the balance of water and of salt. Feed goes in, permeate passes, the
// concentrate carries away what was held back.
//
// Readings may be in ppm or in conductivity at 25 degrees, but all of one kind and one factor, and
// the permeate is read between membrane and resin: behind the resin every membrane looks perfect.
// Source of the balance, if not said otherwise: FilmTec Reverse Osmosis Membranes Technical Manual,
// DuPont, form 45-D01504-en rev. 20, seen in a secondary copy. Exact but for the readings' errors.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

// Permeate / feed of two readings in the same unit. Range: feed 0.001 to 1e6, permeate 0 to feed;
// a stronger permeate (as after an idle night) is answered and marked.
Answer<double> salt_passage_of(double feed, double permeate);

// Fraction of the feed's salt that passes.
template <class Unit>
Answer<double> salt_passage(Amount<Unit> feed, Amount<Unit> permeate) {
  return salt_passage_of(feed.value, permeate.value);
}

// Fraction of the feed's salt that is held back: 1 - salt passage. Below 0 for a permeate that is
// stronger than the feed, marked.
template <class Unit>
Answer<double> rejection(Amount<Unit> feed, Amount<Unit> permeate) {
  const Answer<double> passage = salt_passage(feed, permeate);
  return passage ? Answer<double>(1 - *passage, passage.outside()) : passage;
}

// Fraction of the feed that becomes permeate. Range: flows of 0 to 1e6 L/h, together 0.001 or more.
Answer<double> recovery(LitresPerHour permeate, LitresPerHour concentrate);

// Concentrate / feed of any dissolved thing of which the membrane rejects this fraction, equation
// 51. Range: recovery 0 to 0.99, rejection -1 to 1 (negative: the permeate is the stronger).
// Not to be had from a product reading behind the resin.
Answer<double> concentration_factor(double recovery, double rejection);

// Mean of the feed side / feed, equation 77: what the membrane sees along its length.
// Range: recovery 0 to 0.99.
Answer<double> mean_concentration_factor(double recovery);

// A membrane that holds back the same fraction at each place, while the water along it gets
// stronger. Textbook equation of the differential balance (Rayleigh's).
struct AlongMembrane {
  double concentrate_over_feed;
  double permeate_over_feed;
  double apparent_rejection;  // what feed and permeate readings show; less than the local one
};
// Range: local rejection 0 to 1, recovery 0 to 0.99.
Answer<AlongMembrane> along_membrane(double local_rejection, double recovery);

// The inverse: local rejection from the apparent one, to 1e-9. Raising the recovery lowers the
// apparent rejection of a sound membrane; the local one stays. Range: apparent 0 to 1, recovery 0
// to 0.99.
Answer<double> local_rejection(double apparent_rejection, double recovery);

}  // namespace tidewright::water
