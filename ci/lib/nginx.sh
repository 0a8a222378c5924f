# Debian's nginx without installing it: no server shall begin to listen on a machine because a test wants one.
# Sourced. use_nginx: $cache/nginx/usr/sbin/nginx is there afterwards.
use_nginx() {
  [ -x "$cache/nginx/usr/sbin/nginx" ] && return
  say "Getting nginx (unpacked, not installed)"
  local new
  new=$(mktemp -d)
  chmod 755 "$new"
  (cd "$new" && apt-get download -qq nginx libnginx-mod-http-brotli-static libbrotli1 >/dev/null 2>&1) ||
    { as_root apt-get update -qq; (cd "$new" && apt-get download -qq nginx libnginx-mod-http-brotli-static libbrotli1) ||
      die "nginx could not be downloaded: is there a network?"; }
  for file in "$new"/*.deb; do dpkg -x "$file" "$new/root"; done
  rm -rf "$cache/nginx"; mv "$new/root" "$cache/nginx"
}
