# Shared by all of ci/: where things are, how to say things, how to install. Sourced, never run.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
build=$root/.build
cache=${XDG_CACHE_HOME:-$HOME/.cache}/rehale
export PATH=$PATH:/usr/local/sbin:/usr/sbin:/sbin DEBIAN_FRONTEND=noninteractive CCACHE_DIR=$cache/ccache
mkdir -p "$build" "$cache"

say() { printf '\033[1m%s\033[0m\n' "$*"; }
die() { printf 'ci: %s\n' "$*" >&2; exit 1; }

as_root() {
  if [ "$(id -u)" = 0 ]; then "$@"
  elif command -v sudo >/dev/null; then sudo -E "$@"
  else die "packages are missing and this needs root: install sudo or run as root ($*)"; fi
}

# need_packages NAME...: installs the Debian packages that are not there yet.
need_packages() {
  local missing=() name
  for name in "$@"; do
    dpkg-query -W -f '${db:Status-Status}' "$name" 2>/dev/null | grep -qx installed || missing+=("$name")
  done
  [ ${#missing[@]} = 0 ] && return
  say "Installing ${missing[*]}"
  as_root apt-get update -qq || die "the package lists could not be fetched: is there a network?"
  as_root apt-get install -y -qq --no-install-recommends "${missing[@]}" >"$build/apt.log" 2>&1 ||
    { tail -n 5 "$build/apt.log" >&2; die "Debian packages could not be installed: see $build/apt.log"; }
}

# The mirror this machine is set to use, whatever it is; works before the first apt-get update, too.
debian_mirror() {
  local suite
  suite=$(. /etc/os-release && echo "$VERSION_CODENAME")
  apt-get update --print-uris | sed -n "s#^'\([^']*\)/dists/$suite/InRelease'.*#\1#p" | head -n 1
}

# done_before NAME KEY: was the step NAME done for exactly this KEY? mark_done notes it.
done_before() { [ -f "$build/done.$1" ] && [ "$(cat "$build/done.$1")" = "$2" ]; }
mark_done() { printf '%s' "$2" >"$build/done.$1"; }

# Other processes may set up at the same moment: one at a time.
locked() { exec 9>"$cache/lock"; flock 9; }
