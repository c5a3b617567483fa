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

below=() # folders of the floors below cli
for floor in "${floors[@]}"; do
  [ "$floor" = cli ] || below+=("$root/src/$floor" "$root/include/rillwatt/$floor")
done
complain() { # of every line that matches
  while IFS= read -r hit; do
    echo "$hit: $1"
    broken=1
  done < <(grep -rnE "$2" "${@:3}" --include='*.cpp' --include='*.hpp' /dev/null)
}

# Nothing below cli touches console, clock or files: a file is read through plan's FileSource, a clock is a function
# that is handed in.
complain "console, clock or file access below cli" \
  '#include <(iostream|fstream|filesystem|chrono|ctime|cstdio|print|csignal|unistd\.h|fcntl\.h|sys/.*)>' "${below[@]}"
complain "console, clock or file access below cli" \
  '\b(getenv|fopen|f?printf|system_clock|steady_clock)\b|std::(cout|cerr|cin|clog)\b' "${below[@]}"

# Threads stand in one place: one header of search and its source.
threads='#include <(thread|mutex|shared_mutex|atomic|future|condition_variable|semaphore|latch|barrier|stop_token)>'
threads+='|std::(jthread|thread|async|mutex|atomic)\b|\bthread_local\b'
mapfile -t threaded < <(grep -rlE "$threads" "${below[@]}" --include='*.cpp' --include='*.hpp' |
  sed -E 's/\.(cpp|hpp)$//; s|.*/([a-z]+/[a-z_]+)$|\1|' | sort -u)
if [ "${#threaded[@]}" -gt 1 ] || [[ "${threaded[0]:-search/}" != search/* ]]; then
  echo "threads elsewhere than in one place of search: ${threaded[*]}"
  broken=1
fi

# Writers are handed what they write: they have nothing computed.
writers=()
for floor in text exchange drawing pages; do writers+=("$root/src/$floor" "$root/include/rillwatt/$floor"); done
complain "a writer that has something computed" \
  '\b(assess|solve_site|solve|measure_lengths|build_circuits|summarise_mains|propose_circuits|compute_light|load_light_scene|level_light_at|size_site|find_headroom|propose_lights|plan_cuts|make_bill|report_site|electrician_sheet)\(' \
  "${writers[@]}"
exit $broken
