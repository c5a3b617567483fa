#!/usr/bin/env bash
# Same input, same bytes: whatever the locale, the time zone, the folder the program is run from, the number of
# processors, and however often.
# usage: determinism_test.sh PROGRAM SOURCE_TREE
set -u
program=$1
root=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
fail() { echo "FAILED: $*"; exit 1; }

cp -r "$root/examples/fernhollow" "$work/garden"
site=$work/garden/site.toml
everything() { # everything a garden's user may look at, in one stream
  "$program" check "$site"
  "$program" check "$site" --format json
  "$program" light "$site" --format json
  "$program" size "$site" --all --format json
  "$program" size "$site" --all --per-length --format json
  "$program" headroom "$site" --format json
  "$program" circuits "$site"
  "$program" plan "$site"
  "$program" catalog --format json
  "$program" report "$site" --output "$1" >/dev/null 2>&1
  cat "$1"/*
}

cd "$work" || exit 1
everything "$work/first" > "$work/first.out" 2>/dev/null
[ -s "$work/first/report.html" ] || fail "no report to compare"
export LC_ALL=de_DE.UTF-8 LANG=de_DE.UTF-8 TZ=Pacific/Kiritimati NO_COLOR= COLUMNS=40 TERM=xterm-256color
cd / || exit 1
one=$(taskset -cp $$ | sed 's/.*: *//; s/[-,].*//') # the first processor this shell may use
taskset -cp "$one" $$ >/dev/null || fail "cannot keep to one processor"
everything "$work/second" > "$work/second.out" 2>/dev/null
cmp "$work/first.out" "$work/second.out" || fail "locale, time zone, folder or processors changed the output"
echo "$(wc -c < "$work/first.out") bytes, twice the same"
