# Emscripten 3.1.69: on PATH already, else the machine's own package (Debian 13), else that package
# unpacked beside the system (Debian 12's own is too old for C++20). Sourced.
# use_emscripten sets em_root (the folder of em++) and, where needed, EM_CONFIG.
em_version=3.1.69
em_prefix=$cache/emscripten-$em_version
em_licence=usr/share/doc/emscripten/copyright
em_packages=(emscripten=3.1.69+dfsg-3 binaryen=120-4 libc6 libstdc++6 libgcc-s1)
em_sha256=d2ac788b952c56ab6736b4db2ac0825aa63cfb4c08b8abaefe19e324779d1b2d
binaryen_sha256=47be56009e56170f4338a0154fbff2028bd607bc3c8b6a5414658a985bef6470 # amd64

em_on_path() {
  command -v em++ >/dev/null && em++ --version 2>/dev/null | head -n 1 | grep -qF " $em_version"
}

em_in_apt() { apt-cache policy emscripten 2>/dev/null | grep -qF "Candidate: $em_version+"; }

# The Debian packages that em++ needs here, one a line.
em_needs() {
  if em_on_path; then return
  elif em_in_apt; then echo emscripten
  else printf '%s\n' clang-19 lld-19 llvm-19 node-acorn python3 xz-utils; fi
}

fetch_emscripten() {
  local work deb
  [ "$(dpkg --print-architecture)" = amd64 ] ||
    die "Emscripten $em_version is fetched for amd64 only: on this machine put it on PATH by hand"
  work=$(mktemp -d)
  say "Fetching Emscripten $em_version (240 MB)"
  private_apt "$work" deb trixie || die "Debian 13's package lists could not be fetched: is there a network?"
  (cd "$work/got" && quietly "$build/emscripten.log" apt-get "${apt_options[@]}" -q download "${em_packages[@]}") ||
    die "Emscripten $em_version could not be fetched: see $build/emscripten.log, or put em++ $em_version on PATH"
  for deb in "$work"/got/emscripten_*.deb; do has_sha256 "$deb" "$em_sha256" || die "another emscripten than the pinned one: $deb"; done
  for deb in "$work"/got/binaryen_*.deb; do has_sha256 "$deb" "$binaryen_sha256" || die "another binaryen than the pinned one: $deb"; done
  unpack_emscripten "$work/got" "$em_prefix.new"
  rm -rf "$work" "$em_prefix"
  mv "$em_prefix.new" "$em_prefix"
}

unpack_emscripten() { # debs prefix
  local deb tool lib=$em_prefix/binaryen/rt/usr/lib/x86_64-linux-gnu
  rm -rf "$2"; mkdir -p "$2/binaryen/rt" "$2/binaryen/bin"
  for deb in "$1"/emscripten_*.deb; do
    dpkg-deb --fsys-tarfile "$deb" | tar -x -C "$2" --exclude='*-mt*' --exclude='*asan*' \
      --exclude='*lto-pic*' --exclude=./usr/share/emscripten/tests --exclude='./usr/share/doc*'
    dpkg-deb --fsys-tarfile "$deb" | tar -x -C "$2" "./$em_licence"
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

# em_tool NAME: where a program of Binaryen's is, after use_emscripten.
em_tool() {
  if [ -x "$em_prefix/binaryen/bin/$1" ]; then echo "$em_prefix/binaryen/bin/$1"; else command -v "$1"; fi
}

use_emscripten() {
  if em_on_path; then
    em_root=$(dirname "$(readlink -f "$(command -v em++)")")
  else
    [ -f "$em_prefix/$em_licence" ] || fetch_emscripten
    em_root=$em_prefix/usr/share/emscripten
    export EM_CONFIG=$em_prefix/emconfig.py
  fi
  # Header-only libraries of the machine, and nothing else of it, for the WASM compiler.
  mkdir -p "$build/headers"
  ln -sfn /usr/include/nlohmann "$build/headers/nlohmann"
  ln -sfn /usr/include/tl "$build/headers/tl"
}
