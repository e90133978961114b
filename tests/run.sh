#!/bin/sh
# The tests that run at every change: installs what is missing, builds, tests, sums up.
# Closes with "N passed, N failed" over all stages and the budget each stage used.
# The rest is in tests/long.sh.
cd "$(dirname "$0")/.." || exit 1
. daemon/packages.sh

passed=0 failed=0 began=$(date +%s)
log=$(mktemp -d)
trap 'rm -rf "$log"' EXIT

# stage NAME BUDGET_SECONDS COMMAND...: runs it, counts its tests, notes the time it took.
stage() {
  name=$1 budget=$2 stage_began=$(date +%s)
  shift 2
  printf '\n== %s\n' "$name"
  # The status of COMMAND, not of tee, which only shows and keeps what it says.
  { "$@" 2>&1 </dev/null; echo $? >"$log/status"; } | tee "$log/$name"
  count "$log/$name" "$(cat "$log/status")"
  used=$(($(date +%s) - stage_began))
  note=""
  [ "$used" -le "$budget" ] || note="over budget"
  printf '%-14s %6s s %6s s  %s\n' "$name" "$budget" "$used" "$note" >>"$log/budget"
}

# count FILE STATUS: adds what ctest or GoogleTest said at its very end, for a failed test's own
# words may say the like before it; a stage that fails without such a line, or whose status and
# count disagree, is one more failure.
count() {
  sum=$(sed -n -e 's/^.*tests passed, \([0-9]*\) tests* failed out of \([0-9]*\)$/\1 \2/p' \
    -e 's/^\[  PASSED  \] \([0-9]*\) tests*\.$/0 \1/p' "$1" | tail -n 1)
  stage_failed=${sum% *} stage_all=${sum#* }
  : "${stage_failed:=0}" "${stage_all:=0}"
  [ "$2" -eq 0 ] || [ "$stage_failed" -gt 0 ] || { stage_failed=1 stage_all=$((stage_all + 1)); }
  failed=$((failed + stage_failed))
  passed=$((passed + stage_all - stage_failed))
}

install() { need $build_packages libgtest-dev libgmock-dev librapidcheck-dev python3 python3-gsw \
  python3-aiosmtpd; }

# All but unit_tests, which run under the sanitizers alone: a compiler's minute is dear here.
build() {
  cmake --preset release && cmake --build --preset release --target \
    tidewright pretend_room daemon_tests handbook_tests scenario_tests simulation_tests \
    end_to_end_tests
}

# run_tests LABEL [JOBS]: a stage in which no test ran has failed.
run_tests() { ctest --preset release --no-tests=error -j "${2:-$(nproc)}" -L "^$1\$"; }

# Every cell of the handbook's tables is a test; ctest would count them as one.
run_handbook() { build/release/tests/handbook_tests --gtest_brief=1; }

# Core, configuration and door, under the address and undefined-behaviour sanitizers; in one
# process, for a sanitizer takes longer to start than most of these tests to run.
sanitized() {
  cmake --preset asan >/dev/null && cmake --build --preset asan --target unit_tests &&
    build/asan/tests/unit_tests --gtest_brief=1
}

stage install 120 install
[ "$failed" -ne 0 ] || stage build 480 build
if [ "$failed" -eq 0 ]; then
  stage handbook 60 run_handbook
  stage daemon 60 run_tests unit
  stage simulation 180 run_tests simulation
  stage end_to_end 180 run_tests end_to_end $(($(nproc) * 3)) # they mostly wait
  stage tidy 60 run_tests tidy
  stage unit 300 sanitized
fi

printf '\n%-14s %8s %8s\n' stage budget used
cat "$log/budget"
printf '%-14s %6s s %6s s\n\n' all 1200 $(($(date +%s) - began))
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
