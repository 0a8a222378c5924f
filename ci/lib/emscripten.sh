# Emscripten 3.1.69: on PATH already, else Debian 13's package unpacked beside (Debian 12 has a too old one).
# Sets em_root (folder of em++) and EM_CONFIG. Sourced.
em_version=3.1.69
em_prefix=$cache/emscripten-$em_version
em_packages=(emscripten=3.1.69+dfsg-3 binaryen=120-4 libc6 libstdc++6 libgcc-s1)

em_on_path() {
  command -v em++ >/dev/null && em++ --version 2>/dev/null | head -n 1 | grep -q "$em_version"
}

fetch_emscripten() {
  local work mirror options
  work=$(mktemp -d); mirror=$(debian_mirror)
  [ -n "$mirror" ] || die "no Debian mirror is configured on this machine"
  mkdir -p "$work/lists/partial" "$work/debs/partial"
  printf 'Types: deb\nURIs: %s\nSuites: trixie\nComponents: main\nSigned-By: %s\n' "$mirror" \
    /usr/share/keyrings/debian-archive-keyring.gpg >"$work/s.sources"
  options=(-o "Dir::Etc::sourcelist=$work/s.sources" -o Dir::Etc::sourceparts=/dev/null
    -o "Dir::State::lists=$work/lists" -o Dir::Cache::pkgcache= -o Dir::Cache::srcpkgcache=
    -o Acquire::Check-Valid-Until=false -o Dir::State::status=/dev/null -o Acquire::Retries=3
    -o APT::Sandbox::User=root)
  apt-get "${options[@]}" -qq update || die "Debian 13's package lists could not be fetched"
  (cd "$work/debs" && apt-get "${options[@]}" -qq download "${em_packages[@]}") ||
    die "Emscripten $em_version is no longer to be had from $mirror: put its prefix at $em_prefix"
  unpack_emscripten "$work/debs" "$em_prefix.new"
  rm -rf "$work" "$em_prefix"
  mv "$em_prefix.new" "$em_prefix"
}

unpack_emscripten() { # debs prefix
  local deb tool lib=$em_prefix/binaryen/rt/usr/lib/x86_64-linux-gnu
  rm -rf "$2"; mkdir -p "$2/binaryen/rt" "$2/binaryen/bin"
  for deb in "$1"/emscripten_*.deb; do
    dpkg-deb --fsys-tarfile "$deb" | tar -x -C "$2" --exclude='*-mt*' --exclude='*asan*' \
      --exclude='*lto-pic*' --exclude=./usr/share/emscripten/tests --exclude='./usr/share/doc*'
  done
  for deb in "$1"/{binaryen,libc6,libstdc++6,libgcc-s1}_*.deb; do dpkg-deb -x "$deb" "$2/binaryen/rt"; done
  for tool in "$2"/binaryen/rt/usr/bin/wasm*; do # Debian 13's programs with the library they want
    tool=$(basename "$tool")
    printf '#!/bin/sh\nexec %s/ld-linux-x86-64.so.2 --library-path %s %s "$@"\n' "$lib" "$lib" \
      "$em_prefix/binaryen/rt/usr/bin/$tool" >"$2/binaryen/bin/$tool"
    chmod +x "$2/binaryen/bin/$tool"
  done
  ln -sfn /usr/share/nodejs "$2/usr/share/emscripten/node_modules"
  cat >"$2/emconfig.py" <<X
LLVM_ROOT='/usr/bin'
BINARYEN_ROOT='$em_prefix/binaryen'
NODE_JS='$(command -v node)'
FROZEN_CACHE=True
LLVM_ADD_VERSION='19'
CLANG_ADD_VERSION='19'
X
}

use_emscripten() {
  if em_on_path; then
    em_root=$(dirname "$(readlink -f "$(command -v em++)")")
  else
    need_packages clang-19 lld-19 llvm-19 node-acorn python3 xz-utils
    [ -f "$em_prefix/emconfig.py" ] || { say "Fetching Emscripten $em_version"; fetch_emscripten; }
    em_root=$em_prefix/usr/share/emscripten
    export EM_CONFIG=$em_prefix/emconfig.py
  fi
  # Header-only libraries of the machine, and nothing else of it, for the WASM compiler.
  mkdir -p "$build/headers"
  ln -sfn /usr/include/nlohmann "$build/headers/nlohmann"
  ln -sfn /usr/include/tl "$build/headers/tl"
}
