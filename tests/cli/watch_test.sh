#!/usr/bin/env bash
# `rillwatt watch` sees a file saved in place and one renamed over it, waits out a half-typed file, and leaves on Ctrl-C
# with status 0.
# usage: watch_test.sh PROGRAM SITE
set -u
program=$1
site=$2
work=$(mktemp -d)
pid=
trap '[ -n "$pid" ] && kill -9 "$pid" 2>/dev/null; rm -rf "$work"' EXIT
fail() { echo "FAILED: $*"; echo "--- output"; cat "$work/out"; exit 1; }

expect() { # text, number of lines that hold it
  for _ in $(seq 100); do
    [ "$(grep -c -- "$1" "$work/out")" -ge "$2" ] && return
    sleep 0.1
  done
  fail "no line $2 with: $1"
}

cp "$site" "$work/site.toml"
cp "$(dirname "$site")"/stock.toml "$work/" 2>/dev/null
set -m
"$program" watch "$work/site.toml" --output "$work/report" > "$work/out" 2>&1 & pid=$!
set +m
expect "^Fernhollow: " 1
[ -s "$work/report/report.html" ] || fail "no report was written"

sed -i.bak 's/^name = .*/name = "renamed over"/' "$work/site.toml" # sed -i renames a new file over the old one
expect "^renamed over:" 1

sed 's/^name = .*/name = "saved in place"/' "$work/site.toml.bak" > "$work/copy"
cat "$work/copy" > "$work/site.toml"
expect "^saved in place:" 1

printf '[[fixture' >> "$work/site.toml"
expect "error:" 1
cat "$work/copy" > "$work/site.toml"
expect "^saved in place:" 2

kill -INT "$pid"
wait "$pid"
status=$?
pid=
[ "$status" = 0 ] || fail "status $status instead of 0 after Ctrl-C"
echo "watched, waited and left"
