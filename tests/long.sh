#!/bin/sh
# The tests that take long, by part: sh tests/long.sh [PART...]
#   asan         every test under the address and undefined-behaviour sanitizers
#   tsan         every test under the thread sanitizer
#   lint         clang-format and clang-tidy over every file
#   fuzz         each fuzzer for $FUZZ_SECONDS (1200), from tests/fuzz/corpus on
#   numbers      core/water: $CALLS (10,000,000) calls of any numbers at each of its three parts,
#                every instrument's uncertainty by many draws, 2,000 states against python3-gsw;
#                the seeds are printed, TIDEWRIGHT_SEED=N runs one again
#   mutants      every deliberate mistake made in turn: each must be seen by an invariant
#   mutate       $CHANGES (30) random mistakes in the source: nine of ten must be noticed
#   campaign     $INCIDENTS (100,000) bad nights and more, until each cell of the table of faults,
#                phases and findings is full; $MINUTES bounds it, and it can be taken up again
#   kills        the store, then the daemon at a real broker killed $KILLS (500) times: no announced
#                latch lost, no total falling, nothing told twice, the journal replayed equal
#   hostile      1,000 hostile messages a second for 60 s at a real broker, and a million topics
#   alerts       the daemon killed $KILLS (50) times while it tells people over mail and web
#   hub          a hub beside the daemon for a day of the room, with sensors that die every hour
#   bytes        the store's files cut at, changed at and refused from every byte
#   determinism  one journal replayed in debug and release, to equal commands, alarms and reasons
#   panel        the page in a real browser; then 50 open pages for $SECONDS_OPEN (600), and leaks
#   year         a fault-free year of every household, against the home figures
#   balance      how soon leaks and stuck floats are found, in $DRAWS (200) draws, and what is
#                called what in $YEARS (3) quiet years: three seeds, two gauges, nine households
#   bench        the benchmarks, printed
# Without a PART: each one that has not yet passed at this commit, so that a run can be taken up
# again. Logs are in build/long.
cd "$(dirname "$0")/.." || exit 1
. daemon/packages.sh
. tests/panel/tools.sh
jobs=$(nproc)
kept=build/long
mkdir -p "$kept"

built() { cmake --preset "$1" >/dev/null && cmake --build --preset "$1" ${2:+--target "$2"}; }

asan() { built asan && ctest --preset asan --no-tests=error -j "$jobs"; }

tsan() {
  built tsan &&
    TSAN_OPTIONS="suppressions=$PWD/tests/tsan.supp" ctest --preset tsan --no-tests=error -j "$jobs"
}

lint() {
  need clang-format clang-tidy
  sources=$(find core config daemon tests -name '*.cpp' -o -name '*.hpp')
  clang-format --dry-run -Werror $sources && built dev && run-clang-tidy -quiet -p build/dev \
    -j "$jobs" "$PWD/(core|config|daemon|tests)/"
}

fuzz() {
  need clang libclang-rt-14-dev
  built fuzz || return 1
  for fuzzer in build/fuzz/tests/fuzz_*; do
    [ -x "$fuzzer" ] && [ -f "$fuzzer" ] || continue
    name=$(basename "$fuzzer" | sed s/fuzz_//)
    found=build/fuzz/corpus/$name
    mkdir -p "$found"
    seeds=tests/fuzz/corpus/$name
    [ "$name" != household ] || seeds="$seeds tests/broken"
    "$fuzzer" -max_total_time="${FUZZ_SECONDS:-1200}" -timeout=10 -print_final_stats=1 \
      -artifact_prefix="$found-" "$found" $seeds || return 1
  done
}

numbers() {
  built release unit_tests && built release handbook_tests || return 1
  TIDEWRIGHT_CALLS="${CALLS:-10000000}" build/release/tests/unit_tests \
    --gtest_filter='AnyNumber*:MonteCarlo*:*/MonteCarlo*' &&
    build/release/tests/handbook_tests --gtest_filter='ReferenceLibrary*:HandbookTally*'
}

mutants() { built mutants mutants && build/mutants/tests/mutants "${NIGHTS:-4000}"; }

mutate() { python3 tests/simulation/mutate.py "${CHANGES:-30}" "${TIDEWRIGHT_SEED:-1}"; }

campaign() {
  git describe --always --dirty
  built release campaign &&
    build/release/tests/campaign "$kept/campaign.counts" "${INCIDENTS:-100000}" "${MINUTES:-0}"
}

kills() {
  built release &&
    TIDEWRIGHT_KILLS="${KILLS:-500}" build/release/tests/daemon_tests --gtest_filter='Kill*' &&
    TIDEWRIGHT_KILLS="${KILLS:-500}" build/release/tests/end_to_end_tests --gtest_filter='Kills*'
}

hostile() {
  built release &&
    TIDEWRIGHT_HOSTILE_SECONDS=60 TIDEWRIGHT_TOPICS=1000000 build/release/tests/end_to_end_tests \
      --gtest_filter='Hostile*'
}

alerts() {
  built release &&
    TIDEWRIGHT_KILLS="${KILLS:-50}" build/release/tests/end_to_end_tests \
      --gtest_filter='AlertsEndToEnd.NoKill*'
}

hub() {
  built release &&
    TIDEWRIGHT_HUB_HOURS=24 build/release/tests/end_to_end_tests \
      --gtest_filter='HubTest.KeepsAWhole*'
}

bytes() {
  built release &&
    TIDEWRIGHT_EVERY_BYTE=1 build/release/tests/daemon_tests --gtest_filter='BrokenDisk*'
}

determinism() {
  built release && built dev || return 1
  rm -rf "$kept/determinism.shared" && mkdir "$kept/determinism.shared"
  for build in release dev; do
    TIDEWRIGHT_DETERMINISM="$kept/determinism.shared" "build/$build/tests/simulation_tests" \
      --gtest_filter='Determinism*' || return 1
  done
}

panel() {
  command -v chromium >/dev/null || need chromium || return 1
  command -v npm >/dev/null || need nodejs npm || return 1
  fetch_panel_tools && built release tidewright &&
    node --test --test-concurrency=1 --test-reporter=spec tests/panel/*.test.mjs &&
    built release end_to_end_tests &&
    TIDEWRIGHT_PANEL_SECONDS="${SECONDS_OPEN:-600}" build/release/tests/end_to_end_tests \
      --gtest_filter='Panel*'
}

year() {
  built release simulation_tests &&
    TIDEWRIGHT_YEARS=1 build/release/tests/simulation_tests --gtest_filter='*FaultFreeYear*'
}

balance() {
  built release simulation_tests || return 1
  TIDEWRIGHT_DRAWS="${DRAWS:-200}" TIDEWRIGHT_YEARS="${YEARS:-3}" \
    build/release/tests/simulation_tests --gtest_filter='*Balance*'
}

bench() {
  need libbenchmark-dev
  built release benches || return 1
  for bench in build/release/tests/bench_*; do
    [ -x "$bench" ] && [ -f "$bench" ] || continue
    "$bench" || return 1
  done
}

# Passed at this commit, with nothing changed since?
state() { git rev-parse HEAD; git status --porcelain; }
has_passed() { [ "$(cat "$kept/$1.passed" 2>/dev/null)" = "$(state)" ]; }

parts="lint asan tsan determinism numbers year mutants mutate"
parts="$parts campaign kills alerts hostile hub panel bytes fuzz balance bench"
wanted=${*:-$parts}
need $build_packages libgtest-dev libgmock-dev librapidcheck-dev python3 python3-gsw \
  python3-aiosmtpd || exit 1
passed=0 failed=0
for part in $wanted; do
  case " $parts " in *" $part "*) ;; *) echo "no such part: $part"; exit 64 ;; esac
  [ $# -gt 0 ] || ! has_passed "$part" || { echo "$part: passed before"; continue; }
  began=$(date +%s)
  { "$part" 2>&1 </dev/null; echo $? >"$kept/$part.status"; } | tee "$kept/$part.log"
  # A filter that fits nothing any more must not pass for a test.
  ! grep -q 'Running 0 tests' "$kept/$part.log" || echo 1 >"$kept/$part.status"
  if [ "$(cat "$kept/$part.status")" -eq 0 ]; then
    passed=$((passed + 1))
    state >"$kept/$part.passed"
    echo "$part: passed in $(($(date +%s) - began)) s"
  else
    failed=$((failed + 1))
    echo "$part: failed after $(($(date +%s) - began)) s; see $kept/$part.log"
  fi
done
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
