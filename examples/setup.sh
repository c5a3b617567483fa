# Shared by examples/run.sh and tests/run.sh: names the Debian packages that are missing and installs them.
# To be sourced. Does nothing when everything is there.

packages_to_build=(g++ cmake ninja-build libboost-dev libboost-graph-dev libfmt-dev libtomlplusplus-dev libcli11-dev)

# ensure_packages NAME...
ensure_packages() {
  local name missing=()
  for name in "$@"; do
    [ "$(dpkg-query -W -f='${db:Status-Status}' "$name" 2>/dev/null)" = installed ] || missing+=("$name")
  done
  [ "${#missing[@]}" -gt 0 ] || return 0

  local as_root=()
  if [ "$(id -u)" -ne 0 ]; then
    command -v sudo >/dev/null || {
      echo "These packages are missing and there is no sudo to install them: ${missing[*]}" >&2
      return 1
    }
    as_root=(sudo)
  fi
  echo "Installing what is missing: ${missing[*]}"
  "${as_root[@]}" apt-get update -qq </dev/null
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive \
    apt-get install -y -qq --no-install-recommends "${missing[@]}" </dev/null
}

# Prints a command, then runs it.
run() {
  printf '\n$'
  printf ' %q' "$@"
  printf '\n'
  "$@"
}
