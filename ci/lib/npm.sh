# npm packages of ci/package-lock.json, exact versions, no scripts run. Sourced.
use_npm() {
  command -v node >/dev/null || need_packages nodejs
  command -v npm >/dev/null || need_packages npm
  local key
  key=$(sha256sum "$root/ci/package-lock.json" | cut -d' ' -f1)
  if ! done_before npm "$key" || [ ! -d "$root/ci/node_modules" ]; then
    say "Installing npm packages"
    (cd "$root/ci" && npm ci --ignore-scripts --no-audit --no-fund --loglevel=error) ||
      die "npm packages could not be installed: is there a network, and an npm registry set?"
    mark_done npm "$key"
  fi
  ln -sfn ../ci/node_modules "$root/tests/node_modules"
}
