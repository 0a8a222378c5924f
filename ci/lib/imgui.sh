# Dear ImGui 1.92.2b from Debian's source package, by apt's own client. Sets imgui_dir. Sourced.
# Trust: apt checks the suite's signed Release; the pinned hash is checked again here.
imgui_version=1.92.2b
imgui_sha256=e7bd201d56b5ee90d24d5dac85e5c12f98bdb95410252a62d27b7f89e4566d48
imgui_tar=$cache/imgui_$imgui_version+ds.orig.tar.xz
imgui_dir=$cache/imgui-$imgui_version

imgui_is_right() { [ -s "$1" ] && [ "$(sha256sum <"$1" | cut -d' ' -f1)" = "$imgui_sha256" ]; }

fetch_imgui_from() { # suite
  local work options version
  work=$(mktemp -d); chmod 755 "$work"
  mkdir -p "$work/lists/partial" "$work/dl"
  printf 'Types: deb-src\nURIs: %s\nSuites: %s\nComponents: main\nSigned-By: %s\n' "$(debian_mirror)" "$1" \
    /usr/share/keyrings/debian-archive-keyring.gpg >"$work/s.sources"
  options=(-o "Dir::Etc::SourceList=$work/s.sources" -o Dir::Etc::SourceParts=/dev/null
    -o "Dir::State::Lists=$work/lists" -o Dir::Cache::pkgcache= -o Dir::Cache::srcpkgcache=
    -o Acquire::Check-Valid-Until=false -o Acquire::Retries=3 -o APT::Sandbox::User=root)
  apt-get "${options[@]}" -qq update || return 1
  version=$(apt-cache "${options[@]}" showsrc imgui 2>/dev/null | sed -n 's/^Version: //p' |
    grep -F "$imgui_version+ds" | head -n 1)
  [ -n "$version" ] || return 1
  (cd "$work/dl" && apt-get "${options[@]}" -qq --download-only --tar-only source "imgui=$version" >&2) || return 1
  imgui_is_right "$work/dl/$(basename "$imgui_tar")" || return 1
  cp "$work/dl/$(basename "$imgui_tar")" "$imgui_tar"
  rm -rf "$work"
}

use_imgui() {
  if ! imgui_is_right "$imgui_tar"; then
    say "Fetching Dear ImGui $imgui_version"
    need_packages xz-utils
    fetch_imgui_from forky || fetch_imgui_from sid ||
      die "Dear ImGui $imgui_version is no longer to be had: put $(basename "$imgui_tar") into $cache"
  fi
  [ -f "$imgui_dir/imgui.h" ] && return
  rm -rf "$imgui_dir.new"; mkdir -p "$imgui_dir.new"
  tar -xf "$imgui_tar" -C "$imgui_dir.new" --strip-components=1
  mv "$imgui_dir.new" "$imgui_dir"
}
