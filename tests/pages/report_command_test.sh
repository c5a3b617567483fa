#!/usr/bin/env bash
# rillwatt report: what it writes, what it refuses, what it leaves alone. report_command_test.sh PROGRAM SOURCE_DIR
set -u
program=$1
site=$2/examples/fernhollow/site.toml
failures=0
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
cd "$scratch" || exit 1

check() { # check WHAT COMMAND...
  local what=$1
  shift
  if ! "$@"; then
    echo "FAILED: $what"
    failures=$((failures + 1))
  fi
}
status_is() { # status_is WANTED COMMAND...
  local wanted=$1
  shift
  "$@" >out.txt 2>err.txt
  local status=$?
  [ "$status" -eq "$wanted" ] || { echo "status $status, wanted $wanted: $(head -3 err.txt)"; false; }
}
says() { grep -qF -- "$1" err.txt || { echo "stderr is: $(cat err.txt)"; false; }; }

check "a folder is made when the one above it exists" status_is 0 "$program" report "$site" --output plan
for file in report.html electrician.html electrician.txt bill.csv plan.svg diagram.svg lamps.csv cutlist.csv; do
  check "$file is written" test -s "plan/$file"
done
check "nothing else is in the folder" test "$(ls -A plan | wc -l)" -eq 8
check "what a check does not judge is counted apart" says "of them about light, which \`check\` leaves"
check "each file is named on standard output" test "$(wc -l <out.txt)" -eq 8
check "the cut list knows a typed length" grep -q '^W1-4,.*,HW1,lower-3,4.877,16,typed,' plan/cutlist.csv
check "the cut list knows a measured length" grep -q '^W1-1,.*,W1,HW1,.*,plan,' plan/cutlist.csv
check "the page says which lengths were typed" test "$(grep -c 'sub">as typed<' plan/report.html)" -eq "$(grep -c ',typed,' plan/cutlist.csv)"
check "the page names the site file" grep -q '>site.toml<' plan/report.html
check "nothing that is handed on shows the folders of the site file" test "$(grep -lF "$2" plan/* | wc -l)" -eq 0
check "the drawings are well-formed" xmllint --noout plan/plan.svg plan/diagram.svg

cp -r plan before
check "an earlier report is not replaced without --force" status_is 2 "$program" report "$site" --output plan
check "the refusal says what would help" says "--force"
check "a refused report changes nothing" diff -r before plan
check "--force replaces it" status_is 0 "$program" report "$site" --output plan --force
check "the same site gives the same bytes" diff -r before plan

echo mine >plan/notes.txt
rm plan/report.html
check "one file of an earlier report is enough to refuse" status_is 2 "$program" report "$site" --output plan
check "and then none is written" test ! -e plan/report.html
check "--force leaves other files alone" status_is 0 "$program" report "$site" --output plan --force
check "other files are as they were" test "$(cat plan/notes.txt)" = mine

echo outside >outside.txt
rm plan/bill.csv
ln -s ../outside.txt plan/bill.csv
check "a link out of the folder is refused, even with --force" status_is 2 "$program" report "$site" --output plan --force
check "what the link names is untouched" test "$(cat outside.txt)" = outside

check "a folder under a folder that is not there is refused" status_is 2 "$program" report "$site" --output no/such/plan
check "and not made" test ! -e no
touch file
check "a file is no folder" status_is 2 "$program" report "$site" --output file
check "a wrong site writes nothing" status_is 2 "$program" report no-such-site.toml --output other
check "not even the folder" test ! -e other
check "--output is asked for" status_is 2 "$program" report "$site"

printf '%s\n' 'rillwatt = 1' '[site]' 'name = "Bare"' >bare.toml
check "a site with nothing in it gives a report too" status_is 0 "$program" report bare.toml --output bare

for page in plan/report.html plan/electrician.html bare/report.html; do
  if command -v tidy >/dev/null; then
    tidy -q -e "$page" 2>tidy.txt
    # tidy does not know that drawings may have broken sizes and styles of their own
    grep -vE 'proprietary|<svg> attribute|moved <style>' tidy.txt >wrong.txt
    check "$page is sound HTML: $(head -3 wrong.txt)" test ! -s wrong.txt
  fi
done
check "the hash in the content security policy is the script's own" python3 - plan/report.html <<'PY'
import base64, hashlib, re, sys
page = open(sys.argv[1], encoding="utf-8").read()
script = re.search(r"<script>(.*?)</script>", page, re.S).group(1)
digest = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
sys.exit(0 if "'sha256-%s'" % digest in page else 1)
PY

[ "$failures" -eq 0 ] && echo "all as expected"
exit "$failures"
