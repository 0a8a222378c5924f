# Debian's nginx and Apache httpd without installing them: no server shall begin to listen on a machine because a test
# wants one. Sourced. use_web_servers: both lie unpacked in $cache/web-servers afterwards (tests/browser/support starts them).
web_servers=(nginx libnginx-mod-http-brotli-static libbrotli1 apache2-bin libapr1 libaprutil1 libdb5.3 libexpat1)

use_web_servers() {
  [ -x "$cache/web-servers/usr/sbin/apache2" ] && return
  say "Getting nginx and Apache httpd (unpacked, not installed)"
  local new
  new=$(mktemp -d)
  chmod 755 "$new"
  (cd "$new" && apt-get download -qq "${web_servers[@]}" >/dev/null 2>&1) ||
    { as_root apt-get update -qq; (cd "$new" && apt-get download -qq "${web_servers[@]}") ||
      die "nginx and apache2-bin could not be downloaded: is there a network?"; }
  for file in "$new"/*.deb; do dpkg -x "$file" "$new/root"; done
  rm -rf "$cache/web-servers" "$cache/nginx"; mv "$new/root" "$cache/web-servers"
}
