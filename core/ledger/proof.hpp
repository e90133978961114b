// A leak sensor or a high-high switch that a person tries: how long it takes until everything that
// moves water says OFF.
#pragma once

#include <optional>

#include "core/event.hpp"
#include "core/ledger/sources.hpp"
#include "core/state/ledger.hpp"
#include "core/state/proof.hpp"

namespace tidewright::ledger {

// How long after a sensor was reached a person may tell that it was a test.
inline constexpr Duration told_within = std::chrono::hours{1};

// Times each leak and each high-high while water moves, and takes up a person's word that it was a
// test: then it returns what came of it. A restart ends a trial, never a result.
std::optional<Reason> post_proofs(const Sources&, const Event&, const state::Ledger&,
                                  state::Proofs&);

}  // namespace tidewright::ledger
