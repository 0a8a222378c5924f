# npm packages of a folder's package-lock.json: exact versions, no install scripts. Sourced.
use_npm() { # folder below the root: ci or ci/bench
  local key name=npm-${1//\//-}
  key=$(sha256sum "$root/$1/package-lock.json" | cut -d' ' -f1)
  if ! done_before "$name" "$key" || [ ! -d "$root/$1/node_modules" ]; then
    say "Installing the npm packages of $1/"
    (cd "$root/$1" && quietly "$build/$name.log" npm ci --ignore-scripts --no-audit --no-fund --loglevel=error) ||
      { tail -n 5 "$build/$name.log" >&2; die "npm packages could not be installed: is there a network? See $build/$name.log"; }
    mark_done "$name" "$key"
  fi
  # So that tests find them by name.
  [ -e "$root/tests/node_modules" ] || ln -sfn ../ci/node_modules "$root/tests/node_modules"
}
