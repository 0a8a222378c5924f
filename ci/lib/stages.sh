# The stages of ci/test, in their order. Each is one function that fails when something is not as it should be.
all_stages=(setup format arrows size native tidy wasm content reference node sim site browser)

stage_setup() { "$root/ci/setup"; }

ours() { git -C "$root" ls-files -- '*.cpp' '*.h'; }

stage_format() {
  cd "$root"
  ours | xargs clang-format --dry-run --Werror || die "run: git ls-files '*.cpp' '*.h' | xargs clang-format -i"
}

stage_arrows() { node "$root/ci/lib/arrows.mjs" "$root"; }

# House style: files below 300 lines. Functions are clang-tidy's.
stage_size() {
  cd "$root"
  local long
  long=$(git ls-files -- 'core/*' 'web/*' 'tests/*' 'ci/*' |
    grep -E '\.(cpp|h|mjs|js|py|sh|css|html)$|^ci/[a-z-]+$' | xargs wc -l | awk '$1 > 300 && $2 != "total"')
  [ -z "$long" ] || { printf '%s\n' "$long"; die "these files are over 300 lines: split them by what they do"; }
}

stage_native() {
  REHALE_SANITIZE=1 "$root/ci/build" native
  local program
  for program in rehale_tests rehale_web_tests; do
    "$build/sanitized/tests/$program" --gtest_brief=1
  done
}

# Files that are as they were when clang-tidy found nothing in them are not looked at again.
stage_tidy() {
  cd "$root"
  REHALE_SANITIZE=1 "$root/ci/build" native
  mkdir -p "$build/tidy"
  local headers
  headers=$(git ls-files '*.h' .clang-tidy | xargs sha256sum | sha256sum | cut -c1-16)
  git ls-files 'core/*.cpp' 'web/kit/*.cpp' 'web/screens/*.cpp' 'web/shell/host_null*.cpp' | while read -r file; do
    mark=$build/tidy/$(sha256sum "$file" | cut -c1-16)-$headers
    [ -f "$mark" ] || printf '%s %s\n' "$file" "$mark"
  done | xargs -r -P "$(nproc)" -L 1 bash -c \
    'clang-tidy --quiet -p "'"$build"'/sanitized" "$0" 2>/dev/null && touch "$1"'
}

stage_wasm() {
  "$root/ci/build" wasm-tests
  # Same tests, same sources, as WASM under node.
  node "$build/wasm-tests/tests/rehale_tests.js" --gtest_brief=1
}

stage_content() {
  "$root/ci/build" native
  "$build/native/tests/rehale_validate" "$root/assets"
}

stage_reference() {
  local maker
  for maker in "$root"/tests/reference/*/make.py; do
    /usr/bin/python3 "$maker" --check
  done
}

stage_node() {
  "$root/ci/setup" page
  node --test "$root"/tests/node/
}

stage_sim() {
  "$root/ci/build" native
  "$build/native/tests/rehale_sim"
}

stage_site() { "$root/ci/build" site; }

# One browser at a time: two cores.
stage_browser() {
  "$root/ci/setup" browser
  "$root/ci/build" demo
  [ -d "$build/site" ] || "$root/ci/build" site
  node --test --test-concurrency=1 "$root"/tests/browser/
}
