#!/usr/bin/env bash
# A writer killed at any moment, a full disk and a read-only folder leave the old file whole. One that is told to end
# leaves nothing beside it either.
# usage: interrupted_write_test.sh ENDLESS_WRITER
set -u
writer=$1
work=$(mktemp -d)
cleanup() { umount "$work/small" 2>/dev/null; chmod -R u+w "$work"; rm -rf "$work"; }
fail() { echo "FAILED: $*"; trap - EXIT; cleanup; exit 1; }

whole() { # one of the two texts, complete
  local size others
  size=$(stat -c %s "$1")
  case "$size" in
    300000) others=$(tr -d a < "$1" | wc -c) ;;
    200000) others=$(tr -d b < "$1" | wc -c) ;;
    *) return 1 ;;
  esac
  [ "$others" = 0 ]
}

RANDOM=20
head -c 300000 /dev/zero | tr '\0' a > "$work/site.toml"
for _ in $(seq 25); do
  "$writer" "$work/site.toml" & pid=$!
  sleep "0.0$((RANDOM % 9))$((RANDOM % 9))"
  kill -9 $pid
  wait $pid 2>/dev/null
  whole "$work/site.toml" || fail "torn file after a kill"
done

mkdir "$work/told"
head -c 300000 /dev/zero | tr '\0' a > "$work/told/site.toml"
for signal in TERM HUP USR1 TERM HUP USR1 TERM HUP USR1 TERM HUP USR1; do
  "$writer" "$work/told/site.toml" & pid=$!
  sleep "0.0$((RANDOM % 9))$((RANDOM % 9))"
  kill -$signal $pid
  wait $pid 2>/dev/null
  status=$?
  [ "$status" -gt 128 ] || fail "a writer told to end by SIG$signal left with $status"
  whole "$work/told/site.toml" || fail "torn file after SIG$signal"
  [ "$(ls -A "$work/told")" = site.toml ] || fail "SIG$signal left a temporary file behind"
done

# Not before: a child that a signal meets before it became the writer would run the trap of its parent.
trap 'cleanup' EXIT
mkdir "$work/small"
if mount -t tmpfs -o size=256k tmpfs "$work/small" 2>/dev/null; then
  printf 'old and whole' > "$work/small/site.toml"
  "$writer" "$work/small/site.toml" && fail "a full disk was not noticed"
  [ "$(cat "$work/small/site.toml")" = "old and whole" ] || fail "a full disk tore the file"
  [ "$(ls -A "$work/small" | wc -l)" = 1 ] || fail "a full disk left something behind"
else
  echo "note: no tmpfs may be mounted here, the full disk is not tried"
fi

if [ "$(id -u)" != 0 ]; then
  mkdir "$work/closed"; printf 'old and whole' > "$work/closed/site.toml"; chmod 500 "$work/closed"
  "$writer" "$work/closed/site.toml" && fail "a read-only folder was not noticed"
  [ "$(cat "$work/closed/site.toml")" = "old and whole" ] || fail "a read-only folder tore the file"
elif command -v setpriv >/dev/null; then
  mkdir "$work/closed"; printf 'old and whole' > "$work/closed/site.toml"; chmod 555 "$work/closed"; chmod 755 "$work"
  cp "$writer" "$work/writer"
  setpriv --reuid 65534 --clear-groups "$work/writer" "$work/closed/site.toml" && fail "a read-only folder was not noticed"
  [ "$(cat "$work/closed/site.toml")" = "old and whole" ] || fail "a read-only folder tore the file"
fi
echo "whole after every interruption"
