#!/usr/bin/env bash
# Each floor includes only headers of its own and of lower floors. The order is read from src/CMakeLists.txt.
set -u
root=$1
mapfile -t floors < <(sed -n '/^foreach(floor/,/)/p' "$root/src/CMakeLists.txt" |
  tr -s ' \n' '\n\n' | sed -e 's/foreach(floor//' -e 's/)//' | grep -E '^[a-z]+$')
[ "${#floors[@]}" -ge 10 ] || { echo "could not read the floors from src/CMakeLists.txt"; exit 1; }
declare -A number
for i in "${!floors[@]}"; do number[${floors[$i]}]=$i; done

broken=0
for floor in "${floors[@]}"; do
  while IFS=: read -r file line text; do
    used=${text#*rillwatt/} # no program is started for each line: there are hundreds
    used=${used%%/*}
    if [ -z "${number[$used]:-}" ] || [ "${number[$used]}" -gt "${number[$floor]}" ]; then
      echo "$file:$line: floor $floor includes floor $used, which is not below it"
      broken=1
    fi
  done < <(grep -rnE '^#include "rillwatt/' "$root/src/$floor" "$root/include/rillwatt/$floor" /dev/null)
done

# Nothing below cli touches console, clock or files.
while IFS= read -r hit; do
  echo "$hit: console, clock or file access below cli"
  broken=1
done < <(grep -rnE '#include <(iostream|fstream|filesystem|chrono|cstdio|print|unistd.h)>|\bgetenv\b' \
  $(for f in "${floors[@]}"; do [ "$f" = cli ] || echo "$root/src/$f $root/include/rillwatt/$f"; done))
exit $broken
