# The stages of ci/test, in their order. Each is one function that fails when something is not as it
# should be, and each sets up what it needs itself, so that it can be run alone.
all_stages=(setup format arrows size lock site browser firefox native tidy wasm content reference node sim)
# When all stages are run, each of these lists runs, one by one, beside the others: so two cores have work to the end.
beside=("browser firefox content" "reference node sim")

# While the rest is fetched, compilers have work already. If it fails, stage native says so.
stage_setup() {
  "$root/ci/setup" native quality
  "$root/ci/build" sanitized >"$build/sanitized.log" 2>&1 &
  sleep 1 # it looks at what is installed first, and then leaves that to us
  "$root/ci/setup"
}

stage_format() {
  "$root/ci/setup" quality
  cd "$root"
  git ls-files -- '*.cpp' '*.h' | xargs clang-format --dry-run --Werror 2>"$build/format.log" && return
  grep -oE '^[^:]+: error|^[^:]+:[0-9]+' "$build/format.log" | cut -d: -f1 | sort | uniq -c
  die "run: git ls-files '*.cpp' '*.h' | xargs clang-format -i"
}

stage_arrows() { "$root/ci/setup" quality; node "$root/ci/lib/arrows.mjs" "$root"; }

# House style: files below 300 lines. Functions are clang-tidy's.
stage_size() {
  cd "$root"
  local long
  long=$(git ls-files -- 'core/*' 'web/*' 'tests/*' 'ci/*' |
    grep -E '\.(cpp|h|mjs|js|py|sh|css|html)$|^ci/[a-z-]+$' | xargs wc -l | awk '$1 >= 300 && $2 != "total"')
  [ -z "$long" ] || { printf '%s\n' "$long"; die "these files have 300 lines or more: split them by what they do"; }
}

# Where packages come from is the machine's business: no address may stand in a lock file.
stage_lock() {
  cd "$root"
  ! grep -nE '"resolved"|https?://' ci/package-lock.json ci/peers/package-lock.json ||
    die "run npm with ci/.npmrc, and take the addresses (\"funding\") out of the lock file"
}

stage_native() {
  "$root/ci/build" sanitized
  local core
  "$build/sanitized/tests/rehale_tests" --gtest_brief=1 & core=$!
  "$build/sanitized/tests/rehale_web_tests" --gtest_brief=1
  wait "$core"
}

stage_tidy() {
  "$root/ci/setup" quality
  "$root/ci/build" flags
  node "$root/ci/lib/tidy.mjs" "$root" "$build/flags" "$build/tidy"
}

# The same tests from the same sources, as WASM under node: all that run natively, none left out. And
# scripted runs give the same posterior and the same questions, to the last bit.
stage_wasm() {
  "$root/ci/build" sanitized wasm-tests
  diff <("$build/sanitized/tests/rehale_tests" --gtest_list_tests) \
    <(node "$build/wasm-tests/tests/rehale_tests.js" --gtest_list_tests) ||
    die "the WASM tests are not the native ones"
  node "$build/wasm-tests/tests/rehale_tests.js" --gtest_brief=1
  "$build/sanitized/tests/rehale_digest" >"$build/native.digest"
  node "$build/wasm-tests/tests/rehale_digest.js" >"$build/wasm.digest"
  [ -s "$build/native.digest" ] || die "no run was replayed"
  diff "$build/native.digest" "$build/wasm.digest" ||
    die "a replayed run differs between native and WASM"
}

stage_content() {
  "$root/ci/build" tools
  "$build/tools/tests/rehale_validate" "$root/assets"
  node "$root/ci/lib/translations.mjs" "$root"
}

# Each maker works its fixture out again from general libraries and compares it with the one committed.
stage_reference() {
  "$root/ci/setup" reference
  "$root/ci/build" tools
  local maker
  for maker in "$root"/tests/reference/*/make.py; do
    (cd "$(dirname "$maker")" && /usr/bin/python3 "$maker" --check)
  done
  /usr/bin/python3 "$root/tests/reference/order/families.py" \
    "$build/tools/tests/rehale_order_dump" "$root/assets"
}

stage_node() {
  "$root/ci/setup" page
  "$root/ci/build" tools
  node --test "$root"/tests/node/*.mjs
}

stage_sim() {
  "$root/ci/build" tools
  "$build/tools/tests/rehale_sim"
}

stage_site() {
  "$root/ci/build" --single demo tools
  node "$root/ci/lib/weigh.mjs" "$build/site"
  /usr/bin/python3 "$root/ci/lib/letters.py" "$build"/site/set-*
  ! /usr/bin/python3 "$root/ci/lib/letters.py" "$build"/site/set-* Ж >"$build/letters.log" || die "letters.py misses a missing letter"
}

# Browsers often wait for the page to come to rest: four at a time keep two cores busy.
stage_browser() {
  "$root/ci/setup" browser
  [ -n "${page_is_built:-}" ] || "$root/ci/build" --single demo tools  # an invented group comes from a tool
  local failed=$build/browser-failed again
  node --test --test-concurrency=4 --test-reporter=tap --test-reporter-destination=stdout \
    --test-reporter="$root/ci/lib/failed_files.mjs" --test-reporter-destination="$failed" "$root"/tests/browser/*.mjs && return
  # All is drawn by the processor here, beside other stages: a page may be held up for longer than a test waits. A file
  # or two are tried once more, alone, and that is said; what fails again has failed.
  mapfile -t again <"$failed"
  [ ${#again[@]} -ge 1 ] && [ ${#again[@]} -le 2 ] || return 1
  say "Once more, alone: ${again[*]#"$root/"}"
  node --test "${again[@]}" && echo "browser: once more, alone: ${again[*]#"$root/"}" >"$build/results/browser.again"
}

# A window on a display that nobody sees: without one Firefox has no WebGL 2.
stage_firefox() {
  "$root/ci/setup" firefox
  [ -n "${page_is_built:-}" ] || "$root/ci/build" --single tools  # an invented group comes from a tool
  xvfb-run -a -s '-screen 0 2000x1300x24' node --test --test-concurrency=2 "$root"/tests/firefox/*.mjs
}
