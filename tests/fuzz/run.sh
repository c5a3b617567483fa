#!/usr/bin/env bash
# Builds the fuzzers with clang and runs each, or those named, for a fixed time:
#   tests/fuzz/run.sh [SECONDS [NAME ...]], default 10 seconds of every one of tests/fuzz/seeds.
# What they find is left in build/fuzz/found.
set -euo pipefail
cd "$(dirname "$0")/../.."
seconds=${1:-10}
names=("${@:2}")
[ ${#names[@]} -gt 0 ] || for seeds in tests/fuzz/seeds/*/; do names+=("$(basename "$seeds")"); done
cmake --preset fuzz >/dev/null
cmake --build --preset fuzz
mkdir -p build/fuzz/found
for name in "${names[@]}"; do
  seeds=tests/fuzz/seeds/$name
  corpus=build/fuzz/corpus/$name
  mkdir -p "$corpus"
  echo "== fuzzing $name for $seconds s"
  log=build/fuzz/found/$name.log
  status=0
  build/fuzz/tests/fuzz/"${name}_fuzzer" -seed=1 -max_total_time="$seconds" -timeout=10 -rss_limit_mb=2048 -max_len=8192 \
    -print_final_stats=1 -artifact_prefix=build/fuzz/found/ "$corpus" "$seeds" >"$log" 2>&1 || status=$?
  grep -E "^stat::(number_of_executed|peak_rss)|ERROR|SUMMARY|BINGO|artifact" "$log" || true
  [ "$status" -eq 0 ] || { echo "fuzzer $name found something: see $log"; exit 1; }
done
