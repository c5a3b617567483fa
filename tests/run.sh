#!/usr/bin/env bash
# Every test there is: builds, formatting, headers alone, fuzzers, the whole suite plain and under the sanitizers.
# The last lines are ctest's summary over all of it. Writes only under build/.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
. examples/setup.sh

packages_to_test=(catch2 clang clang-format libclang-rt-14-dev ngspice glpk-utils coinor-cbc python3 python3-jsonschema python3-shapely
  libxml2-utils chromium poppler-utils tidy)
ensure_packages "${packages_to_build[@]}" "${packages_to_test[@]}"

for preset in release dev asan; do
  run cmake --preset "$preset"
  run cmake --build --preset "$preset"
done

# One ctest over the plain build, the sanitized build the fuzzers and the two checks that are build targets.
mkdir -p build/all
cat >build/all/CTestTestfile.cmake <<END
add_test("house: every source is formatted" cmake --build "$PWD/build/dev" --target format-check)
add_test("fuzz: seconds of each fuzzer find nothing" bash "$PWD/tests/fuzz/run.sh")
set_tests_properties("fuzz: seconds of each fuzzer find nothing" PROPERTIES TIMEOUT 2400 RUN_SERIAL TRUE)
add_test("house: every header compiles alone" cmake --build "$PWD/build/dev" --target all_verify_interface_header_sets)
set_tests_properties("house: every header compiles alone" PROPERTIES DEPENDS "house: every source is formatted"
  TIMEOUT 1800 RUN_SERIAL TRUE)
subdirs("$PWD/build/dev" "$PWD/build/asan")
END
run ctest --test-dir build/all --output-on-failure --timeout 900 -j"$(nproc)"
