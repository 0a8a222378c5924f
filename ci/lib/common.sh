# Shared by all of ci/: where things are, how to say things, how to install. Sourced, never run.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
build=$root/.build
HOME=${HOME:-$(getent passwd "$(id -u)" | cut -d: -f6)}
cache=${XDG_CACHE_HOME:-$HOME/.cache}/rehale
export HOME PATH=$PATH:/usr/local/sbin:/usr/sbin:/sbin LC_ALL=C.UTF-8 DEBIAN_FRONTEND=noninteractive
export CCACHE_DIR=$cache/ccache CCACHE_BASEDIR=$root CCACHE_NOHASHDIR=1
export CCACHE_SLOPPINESS=pch_defines,time_macros # ccache keeps nothing made with precompiled headers otherwise
export CCACHE_PCH_EXTSUM=1 # and goes by what ci/lib/precompiled.cmake tells it
mkdir -p "$build" "$cache"

say() { printf '\033[1m%s\033[0m\n' "$*"; }
die() { printf 'ci: %s\n' "$*" >&2; exit 1; }

# quietly LOG COMMAND...: what it says goes to LOG; a line now and then shows how far it is.
quietly() {
  local log=$1; shift
  : >"$log"
  "$@" 2>&1 </dev/null | note_progress "$log"
}

note_progress() { # log
  local line step='' said=$SECONDS began=$SECONDS
  while true; do
    if IFS= read -r -t 5 line; then
      printf '%s\n' "$line" >>"$1"
      [[ $line =~ ^\[[0-9]+/[0-9]+\] ]] && step=${BASH_REMATCH[0]}
    elif [ $? -gt 128 ]; then
      printf '%s' "$line" >>"$1" # waited in vain; the rest of this line comes later
    else
      return 0
    fi
    ((SECONDS - said < 10)) && continue
    said=$SECONDS
    printf '   %s %d s\n' "$step" $((SECONDS - began))
  done
}

as_root() {
  if [ "$(id -u)" = 0 ]; then "$@"; else sudo env DEBIAN_FRONTEND=noninteractive "$@"; fi
}

is_installed() {
  [ "$(dpkg-query -W -f '${db:Status-Status}' "$1" 2>/dev/null)" = installed ]
}

# need_packages NAME...: installs the Debian packages that are not there yet.
need_packages() {
  local missing=() name
  for name in "$@"; do is_installed "$name" || missing+=("$name"); done
  [ ${#missing[@]} = 0 ] && return
  say "Installing ${missing[*]}"
  command -v apt-get >/dev/null || die "there is no apt-get here: install by hand ${missing[*]}"
  [ "$(id -u)" = 0 ] || command -v sudo >/dev/null ||
    die "installing Debian packages needs root: run as root, or install sudo, or have installed ${missing[*]}"
  as_root apt-get -o DPkg::Lock::Timeout=300 -qq update >"$build/apt.log" 2>&1 ||
    { tail -n 3 "$build/apt.log" >&2; die "Debian's package lists could not be fetched: is there a network?"; }
  quietly "$build/apt.log" as_root apt-get -o DPkg::Lock::Timeout=300 -o Acquire::Retries=3 install -y -q \
    --no-install-recommends "${missing[@]}" ||
    { tail -n 5 "$build/apt.log" >&2; die "Debian packages could not be installed: is there a network? See $build/apt.log"; }
}

# The mirror this machine is set to use, whatever it is; works before the first apt-get update, too.
debian_mirror() {
  local suite
  suite=$(. /etc/os-release && echo "$VERSION_CODENAME")
  apt-get update --print-uris | sed -n "s#^'\([^']*\)/dists/$suite/InRelease'.*#\1#p" | head -n 1
}

# private_apt DIR KIND SUITE: options (in apt_options) for an apt that knows another suite and only that,
# in DIR and nowhere else. KIND: deb or deb-src.
private_apt() {
  local mirror
  mirror=$(debian_mirror)
  [ -n "$mirror" ] || die "no Debian mirror is configured on this machine: see 'man sources.list'"
  mkdir -p "$1/lists/partial" "$1/got"
  printf 'Types: %s\nURIs: %s\nSuites: %s\nComponents: main\nSigned-By: %s\n' "$2" "$mirror" "$3" \
    /usr/share/keyrings/debian-archive-keyring.gpg >"$1/apt.sources"
  apt_options=(-o "Dir::Etc::SourceList=$1/apt.sources" -o Dir::Etc::SourceParts=/dev/null
    -o "Dir::State::Lists=$1/lists" -o Dir::Cache::pkgcache= -o Dir::Cache::srcpkgcache=
    -o Dir::State::status=/dev/null -o Acquire::Check-Valid-Until=false -o Acquire::Retries=3
    -o APT::Sandbox::User=root)
  apt-get "${apt_options[@]}" -qq update
}

has_sha256() { [ -s "$1" ] && [ "$(sha256sum <"$1" | cut -d' ' -f1)" = "$2" ]; }

# done_before NAME KEY: was the step NAME done for exactly this KEY? mark_done notes it.
done_before() { [ -f "$build/done.$1" ] && [ "$(cat "$build/done.$1")" = "$2" ]; }
mark_done() { printf '%s' "$2" >"$build/done.$1"; }

# one_at_a_time FILE: waits until no other process holds FILE, then holds it until this one ends.
one_at_a_time() {
  exec 9>"$1"
  flock -n 9 || { say "Waiting for another run of ci/ to finish"; flock 9; }
}
