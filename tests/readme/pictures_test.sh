#!/usr/bin/env bash
# The guide's pictures are what the program draws today. With --update they are drawn anew.
# usage: pictures_test.sh PROGRAM SOURCE_TREE [--update]
set -u
program=$1
root=$2
pictures=$root/examples/guide/pictures
site=$root/examples/fernhollow/site.toml
status=0
picture() { # name, options of `rillwatt plan`
  local name=$1 drawn
  shift
  drawn=$(mktemp)
  "$program" plan "$site" "$@" > "$drawn" 2>/dev/null
  if [ "${update:-}" = yes ]; then cp "$drawn" "$pictures/$name"
  elif ! cmp -s "$drawn" "$pictures/$name"; then echo "FAILED: $name is not what the program draws; run with --update"; status=1; fi
  rm -f "$drawn"
}
[ "${3:-}" = --update ] && update=yes
picture plan.svg
picture light.svg --light
picture diagram.svg --diagram
exit $status
