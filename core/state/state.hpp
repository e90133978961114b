// All that is remembered from one step to the next, one file per stage. Flat and small: copied to
// describe() and to the store as it is.
#pragma once

#include <type_traits>

#include "core/state/alarm.hpp"
#include "core/state/attended.hpp"
#include "core/state/bypass.hpp"
#include "core/state/circumstances.hpp"
#include "core/state/comparison.hpp"
#include "core/state/drive.hpp"
#include "core/state/finding.hpp"
#include "core/state/latch.hpp"
#include "core/state/lease_test.hpp"
#include "core/state/ledger.hpp"
#include "core/state/make_water.hpp"
#include "core/state/notice.hpp"
#include "core/state/proof.hpp"
#include "core/state/signal.hpp"

namespace tidewright {

struct State {
  state::Circumstances circumstances;
  state::Signals signals{};
  state::Comparison comparison;
  state::Ledger ledger;
  state::Proofs proofs;
  state::Findings findings;
  state::MakeWater make_water;
  state::AttendedRuns attended{};
  state::LeaseTests lease_tests;
  state::Bypasses bypasses;
  state::Drives drives{};
  state::Latches latches;
  state::Armed armed;
  state::Alarms alarms;
  state::Flood flood;
  state::Digest digest;
  state::Notices notices;
};

static_assert(std::is_trivially_copyable_v<State>);

}  // namespace tidewright
