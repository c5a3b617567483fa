#!/usr/bin/env bash
# Builds rillwatt and does the main job on the example garden. Writes only under build/.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
. examples/setup.sh

ensure_packages "${packages_to_build[@]}"
run cmake --workflow --preset release

rillwatt=build/release/rillwatt
site=examples/fernhollow/site.toml
run "$rillwatt" check "$site"
run "$rillwatt" light "$site"
run "$rillwatt" size "$site" --all
run "$rillwatt" report "$site" --output build/example-report --force

echo
echo "Open build/example-report/report.html in a browser."
echo "All of it worked. Next: $rillwatt --help, and the tour in README.md."
