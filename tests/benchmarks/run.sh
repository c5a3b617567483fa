#!/usr/bin/env bash
# Builds the release program and its benchmarks and prints one table after the other: every speed goal with its figure,
# rivals side by side in the same run. Changes nothing in the tree.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."
cmake --preset release >/dev/null
cmake --build --preset release >/dev/null
echo "Machine: $(nproc) cores, $(uname -m); load $(cut -d' ' -f1 /proc/loadavg)"
for benchmark in build/release/tests/benchmarks/*_benchmark; do
  printf '\n== %s\n' "$(basename "$benchmark" _benchmark)"
  "$benchmark"
done
printf '\n== whole processes on the example\n'
site=examples/fernhollow/site.toml
seconds() { # best of five
  for _ in 1 2 3 4 5; do { TIMEFORMAT=%R; time "$@" >/dev/null 2>&1; } 2>&1; done | sort -n | head -1
}
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
printf 'check   %s s\n' "$(seconds build/release/rillwatt check "$site")"
printf 'size    %s s\n' "$(seconds build/release/rillwatt size "$site" --all)"
printf 'report  %s s\n' "$(seconds build/release/rillwatt report "$site" --output "$folder/report" --force)"
