#!/usr/bin/env bash
# One judge: what may break is decided in src/limits alone. Nothing that chooses, computes tables or writes holds a
# figure against a limit itself; it asks `Standing`, `Breach`, `place_in_window` and their like.
set -u
cd "$1"
folders=()
for floor in search purchase sizing plan text exchange drawing pages; do
  for folder in src/$floor include/rillwatt/$floor; do [ -d "$folder" ] && folders+=("$folder"); done
done
[ "${#folders[@]}" -ge 6 ] || { echo "the folders to look through are not there"; exit 1; }

# Each line of code with its place: no comments, and "." for "->", so that ">" is always a comparison.
lines=$(find "${folders[@]}" -name '*.cpp' -o -name '*.hpp' | sort |
  xargs awk '{ sub(/ *\/\/.*/, ""); gsub(/->/, "."); print FILENAME ":" FNR ":" $0 }')

broken=0
tell() { # PATTERN WORDS [EXCEPTION]
  while IFS= read -r hit; do
    echo "$hit"
    echo "    $2: ask the floor limits"
    broken=1
  done < <(grep -E "$1" <<<"$lines" | grep -vE "${3:-^$}")
}

value='(transformer_margin|transformer_rating|walk_uniformity|falls_lit_share|wet_contact|wet_contact_iec)\.value'
limit="window_low|window_high|secondary_limit|type\.ampacity|primary_volts|$value"
tell '(^|[^a-z_])(above|below)\(' "compares with a limit" 'vector<'
tell 'limit_slack' "takes the slack of a limit into its own hands"
tell "\b($limit)\b[^<>;\"]*[<>]" "compares with a limit"
tell "[<>][^<>\"]*\b($limit)\b" "compares with a limit" '(optional|vector|span|Limit)<|#include'
exit $broken
