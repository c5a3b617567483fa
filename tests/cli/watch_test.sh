#!/usr/bin/env bash
# `rillwatt watch` sees a file saved in place and one renamed over it, a catalog after a slip in it, links and folders put
# in the place of others; it waits out a half-typed file, and leaves on Ctrl-C with status 0.
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

start() {
  set -m
  "$program" watch "$@" > "$work/out" 2>&1 & pid=$!
  set +m
}

leave() {
  kill -INT "$pid"
  wait "$pid"
  status=$?
  pid=
  [ "$status" = 0 ] || fail "status $status instead of 0 after Ctrl-C"
}

cp "$site" "$work/site.toml"
cp "$(dirname "$site")"/stock.toml "$work/" 2>/dev/null
start "$work/site.toml" --output "$work/report"
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

# A slip in the catalog, and the catalog mended; the same with a site that cannot be read in between.
[ -f "$work/stock.toml" ] || fail "the example has no catalog of its own"
cp "$work/stock.toml" "$work/stock.good"
echo 'slip' >> "$work/stock.toml"
expect "stock.toml:.*error:" 1
cat "$work/stock.good" > "$work/stock.toml"
expect "^saved in place:" 3
printf '[[fixture' >> "$work/site.toml"
expect "site.toml:.*error:" 2
echo 'slip' >> "$work/stock.toml"
expect "site.toml:.*error:" 3
cat "$work/copy" > "$work/site.toml"
expect "stock.toml:.*error:" 2
cat "$work/stock.good" > "$work/stock.toml"
expect "^saved in place:" 4
leave

# A link to one version of a file put in the place of another, then a whole folder, then a link to a folder.
mkdir -p "$work/garden/v1" "$work/garden/v2" "$work/spare"
for version in v1 v2; do
  sed "s/^name = .*/name = \"version $version\"/" "$work/copy" > "$work/garden/$version/site.toml"
  cp "$work/stock.good" "$work/garden/$version/stock.toml"
done
cp "$work/stock.good" "$work/garden/stock.toml"
ln -s v1/site.toml "$work/garden/site.toml"
start "$work/garden/site.toml"
expect "^version v1:" 1
ln -s v2/site.toml "$work/garden/.new" && mv "$work/garden/.new" "$work/garden/site.toml"
expect "^version v2:" 1
sed 's/^name = .*/name = "behind the link"/' "$work/copy" > "$work/garden/v2/site.toml"
expect "^behind the link:" 1

sed 's/^name = .*/name = "another folder"/' "$work/copy" > "$work/spare/site.toml"
cp "$work/stock.good" "$work/spare/stock.toml"
mv "$work/garden" "$work/garden.old"
sleep 0.3
mv "$work/spare" "$work/garden"
expect "^another folder:" 1
sed -i 's/^name = .*/name = "within it"/' "$work/garden/site.toml"
expect "^within it:" 1
leave

ln -s garden "$work/current"
start "$work/current/site.toml"
expect "^within it:" 1
ln -s garden.old/v1 "$work/.next" && mv -T "$work/.next" "$work/current"
expect "^version v1:" 1
leave
echo "watched, waited and left"
