# Dear ImGui 1.92.2b from Debian's source package, by apt's own client. Sets imgui_dir. Sourced.
# Trust: apt checks the suite's signed Release; the pinned hash is checked again here.
imgui_version=1.92.2b
imgui_sha256=e7bd201d56b5ee90d24d5dac85e5c12f98bdb95410252a62d27b7f89e4566d48
imgui_tar=$cache/imgui_$imgui_version+ds.orig.tar.xz
imgui_dir=$cache/imgui-$imgui_version

fetch_imgui_from() { # suite folder
  local version got
  private_apt "$2" deb-src "$1" || return 1
  version=$(apt-cache "${apt_options[@]}" showsrc imgui 2>/dev/null | sed -n 's/^Version: //p' |
    grep -F "$imgui_version+ds" | head -n 1) || return 1
  got=$2/got/$(basename "$imgui_tar")
  (cd "$2/got" && apt-get "${apt_options[@]}" -qq --download-only --tar-only source "imgui=$version" >&2) || return 1
  has_sha256 "$got" "$imgui_sha256" || { echo "ci: $1 hands out another Dear ImGui than the pinned one" >&2; return 1; }
  cp "$got" "$imgui_tar"
}

fetch_imgui() {
  local work
  work=$(mktemp -d)
  say "Fetching Dear ImGui $imgui_version"
  fetch_imgui_from forky "$work/forky" || fetch_imgui_from sid "$work/sid" ||
    { rm -rf "$work"; die "Dear ImGui $imgui_version could not be fetched: is there a network? \
If Debian has moved on, put $(basename "$imgui_tar") into $cache"; }
  rm -rf "$work"
}

use_imgui() {
  has_sha256 "$imgui_tar" "$imgui_sha256" || { rm -rf "$imgui_dir"; fetch_imgui; }
  [ -f "$imgui_dir/imgui.h" ] && return
  rm -rf "$imgui_dir.new"; mkdir -p "$imgui_dir.new"
  tar -xf "$imgui_tar" -C "$imgui_dir.new" --strip-components=1
  mv "$imgui_dir.new" "$imgui_dir"
}
