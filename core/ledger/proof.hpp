// When each protection was last tried for real, and how long it took.
#pragma once

#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/ledger/sources.hpp"
#include "core/state/ledger.hpp"
#include "core/state/proof.hpp"

namespace tidewright::ledger {

// How long after a sensor was reached a person may tell that it was a test.
inline constexpr Duration told_within = std::chrono::hours{1};

// Times each leak and each high-high from the demand until everything that moves water says OFF,
// and takes up a person's word that it was a test. Answers every Tell; what changes the records is
// also kept on the disk. Also takes up what each fill proves of the gauge.
void post_proofs(const Sources&, const Event&, const state::Ledger&, state::Proofs&, Effects&);

}  // namespace tidewright::ledger
