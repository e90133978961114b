# Installs from Debian's own packages what is missing. Read by daemon/demo.sh and tests/run.sh.

# What building and trying the program needs.
build_packages="g++ cmake ninja-build pkg-config libfmt-dev libspdlog-dev nlohmann-json3-dev
  libpaho-mqtt-dev libpaho-mqttpp-dev libssl-dev libtomlplusplus-dev libcli11-dev
  libsqlitecpp-dev libsqlite3-dev libcpp-httplib-dev libcurl4-openssl-dev libjs-dygraphs
  mosquitto mosquitto-clients"

# need PACKAGE...: returns once each of them is installed; as root, or by sudo.
need() {
  missing=""
  for package in "$@"; do
    status=$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null)
    [ "$status" = installed ] || missing="$missing $package"
  done
  [ -n "$missing" ] || return 0
  echo "Installing from Debian:$missing"
  as_root=""
  [ "$(id -u)" -eq 0 ] || as_root="sudo"
  $as_root apt-get update -qq </dev/null &&
    $as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends \
      $missing </dev/null >/dev/null
}
