# Puts the page together as static files: scripts bundled, fonts cut down, content packed, all compressed.
# Sourced by ci/build.

# Latin letters of western European languages, digits, the punctuation that texts use.
font_letters=U+0020-007E,U+00A0-00FF,U+2010-2015,U+2018-201E,U+2022,U+2026,U+2032,U+2033,U+20AC,U+2212

make_fonts() { # to
  local from=$root/ci/node_modules/@expo-google-fonts/atkinson-hyperlegible-next pair
  mkdir -p "$1"
  for pair in 400Regular:regular 700Bold:bold; do
    local out=$1/${pair#*:}.ttf in=$from/${pair%:*}/AtkinsonHyperlegibleNext_${pair%:*}.ttf
    [ "$out" -nt "$in" ] && [ "$out" -nt "$root/ci/lib/site.sh" ] && continue
    /usr/bin/pyftsubset "$in" --unicodes="$font_letters" --no-hinting --layout-features='' \
      --name-IDs=0,1,2,5,13,14 --output-file="$out"
  done
  cp "$from/LICENSE_FONT" "$1/LICENSE_FONT" 2>/dev/null || true
}

compress_all() { # dir
  local file
  find "$1" -type f \( -name '*.html' -o -name '*.js' -o -name '*.css' -o -name '*.json' -o -name '*.wasm' \
    -o -name '*.ttf' -o -name '*.svg' -o -name '*.txt' \) | while read -r file; do
    brotli -q 11 -f -k "$file" -o "$file.br"
    gzip -9 -n -k -f "$file"
  done
}

put_page() { # into folder-of-the-wasm [undivided]: all but the content, which is there already
  local id size later=
  make_fonts "$build/fonts"
  cp -r "$build/fonts" "$1/fonts"
  cp "$root"/web/*.css "$root"/web/*.svg "$root"/web/*.webmanifest "$1/"
  for size in 192 512; do rsvg-convert -w $size -h $size "$root/web/favicon.svg" -o "$1/icon-$size.png"; done
  if [ -n "${3:-}" ]; then
    cp "$2/rehale.wasm" "$1/rehale.wasm"
  else
    later=$(node "$root/ci/lib/first_part.mjs" "$2/rehale.wasm" "$2/rehale.mjs" "$1" "$(em_tool wasm-split)")
  fi
  id=$(cat "$2/rehale.wasm" "$2/rehale.mjs" "$root"/web/js/*.js "$root"/web/*.{html,css} | sha256sum | cut -c1-12)
  node "$root/ci/lib/bundle.mjs" "$root/web/js/main.js" "$2/rehale.mjs" "$1/app.js" "$later"
  node "$root/ci/lib/licences.mjs" "$1" "$1/packages.json" "$imgui_dir" "$em_root" "$build/fonts"
  rm "$1/packages.json"
  node "$root/ci/lib/index.mjs" "$root/web/index.html" "$root/assets/text/en.json" "$id" >"$1/index.html"
}

put_content() { # into
  node "$root/ci/lib/content.mjs" "$root/assets" "$1/content"
  node "$root/ci/lib/scene.mjs" "$root/assets" "$1/content"
  # All pictures in one file: they share so much that it is half as large.
  local scene family
  for scene in "$1"/content/families/*/scene.txt; do
    family=$(basename "$(dirname "$scene")")
    [ ! -s "$1/content/scenes.txt" ] || printf '\n' >>"$1/content/scenes.txt" # between two
    { printf '= %s\n' "$family"; cat "$scene"; } >>"$1/content/scenes.txt"
    rm "$scene"
  done
}

# Whole or not at all: what is served is never half new.
make_site() { # to folder-of-the-wasm [undivided]: the WASM in one part
  local new=$1.new
  rm -rf "$new"; mkdir -p "$new"
  put_content "$new"
  put_page "$new" "$2" "${3:-}"
  if [ -z "${3:-}" ]; then
    node "$root/ci/lib/named_set.mjs" "$new"
    node "$root/ci/lib/offline.mjs" "$new" "$root/web/js"
  fi
  compress_all "$new"
  rm -rf "$1"; mv "$new" "$1"
}
