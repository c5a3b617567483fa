#!/usr/bin/env bash
# examples_test.sh PROGRAM REPOSITORY: what `check` must say about each example.
set -u
program=$1
examples=$2/examples
failed=0

# expect STATUS SITE: runs check; leaves the ids of the rules it broke in $rules.
expect() {
  local status=0
  json=$("$program" check "$examples/$2/site.toml" --format json) || status=$?
  rules=$(grep -oE '"rule": ?"[a-z0-9-]+"' <<<"$json" | sed -E 's/.*"([a-z0-9-]+)"$/\1/' | sort -u)
  [ "$status" = "$1" ] && return
  echo "check of $2 ended with status $status, not $1; its rules: $(tr '\n' ' ' <<<"$rules")"
  failed=1
}

# A garden that passes shows nothing worse than these.
expect 0 fernhollow
for rule in $rules; do
  case $rule in
    lamp-overvoltage | receptacle-near-water | near-water | joint-in-water | uplight-wasted | transformer-margin | \
      shared-gfci) ;;
    *) echo "fernhollow breaks $rule"; failed=1 ;;
  esac
done

expect 0 brookyard-metric

expect 1 fernhollow-first-try
for rule in lamp-undervoltage lamp-overvoltage cable-overloaded open-value length-shorter-than-plan \
  route-crosses-paving wet-contact-voltage supply-not-listed-for-water fixture-not-submersible near-water \
  pump-without-gfci receptacle-without-gfci receptacle-cover receptacle-near-water breaker-exceeds-conductor \
  burial-depth cord-too-short; do
  grep -qx "$rule" <<<"$rules" || { echo "the first try does not show $rule"; failed=1; }
done
exit $failed
