#!/bin/sh
# A pretend water room, told like a story: sh daemon/demo.sh [--seconds N] [--pace K] [--headless]
#   --seconds N   end after N seconds at the latest; the story must be over by then
#   --pace K      the room and the daemon's clock run K times faster than the wall's (30)
#   --headless    print no prompt at the end
# Installs what is missing from Debian's packages, builds, and starts on this machine only: a
# private broker, a pretend room that speaks MQTT like real sensors and plugs, and the daemon.
# Exit 0 only if the story went as told. The story is daemon/demo.story.
cd "$(dirname "$0")/.." || exit 1
. daemon/packages.sh

seconds=600 pace=30 headless=""
while [ $# -gt 0 ]; do
  case "$1" in
    --seconds) seconds=$2; shift 2 ;;
    --pace) pace=$2; shift 2 ;;
    --headless) headless=yes; shift ;;
    *) sed -n '2,5s/^# //p' "$0"; exit 64 ;;
  esac
done

build() {
  cmake --preset release -D TIDEWRIGHT_TESTS=OFF &&
    cmake --build --preset release --target tidewright pretend_room
}

# start_broker: on a free port of the loopback, into $port and $broker. A port that somebody else
# has is found out by the broker itself, which then ends.
start_broker() {
  for port in $(shuf -i 20000-32000 -n 20); do
    printf '%s\n' "listener $port 127.0.0.1" "allow_anonymous true" "set_tcp_nodelay true" \
      "persistence false" "user root" >"$folder/broker.conf"
    mosquitto -c "$folder/broker.conf" >"$folder/broker.log" 2>&1 </dev/null &
    broker=$!
    for _ in $(seq 50); do
      kill -0 "$broker" 2>/dev/null || break
      mosquitto_pub -h 127.0.0.1 -p "$port" -t demo/hello -n 2>/dev/null && return 0
      sleep 0.1
    done
  done
  echo "No broker could be started:"
  cat "$folder/broker.log"
  return 1
}

# panel_address: where the daemon says that its page is, as soon as it does.
panel_address() {
  for _ in $(seq 50); do
    found=$(sed -n 's/.*The panel is at \(http:[^ ]*\)\.$/\1/p' "$folder/daemon.log" | head -n 1)
    [ -z "$found" ] || { echo "$found"; return 0; }
    kill -0 "$daemon" 2>/dev/null || return 1
    sleep 0.1
  done
  return 1
}

# Ends what was started here, each by its number, and waits until it is gone.
clean_up() {
  for started in $story $daemon $broker; do
    kill "$started" 2>/dev/null && wait "$started" 2>/dev/null
  done
  rm -rf "$folder"
}

need $build_packages || exit 1
folder=$(mktemp -d)
story="" daemon="" broker=""
trap clean_up EXIT
trap 'exit 130' INT TERM

echo "Building (a few minutes the first time) ..."
build >"$folder/build.log" 2>&1 </dev/null || { cat "$folder/build.log"; exit 1; }
start_broker || exit 1

build/release/tidewright run --config config/demo.toml --broker "mqtt://127.0.0.1:$port" \
  --state "$folder/state" --pace "$pace" >"$folder/daemon.log" 2>&1 </dev/null &
daemon=$!
echo "The room's times are hours:minutes:seconds; it runs $pace times as fast as yours."
if address=$(panel_address); then echo "The panel: $address"; fi
echo "To listen in: mosquitto_sub -h 127.0.0.1 -p $port -v -t '#'"
echo
build/release/tests/pretend_room/pretend_room --config config/demo.toml \
  --story daemon/demo.story --broker "mqtt://127.0.0.1:$port" --pace "$pace" --filled 0.42 \
  </dev/null &
story=$!
timeout "$seconds" tail --pid="$story" -f /dev/null || kill "$story" 2>/dev/null
wait "$story"
ended=$?

echo
if [ "$ended" -eq 0 ] && kill -0 "$daemon" 2>/dev/null; then
  echo "The story came true."
else
  echo "The story did not come true (in $seconds seconds). The daemon's last words:"
  tail -n 20 "$folder/daemon.log"
  ended=1
fi
if [ -z "$headless" ] && [ -t 0 ]; then
  printf 'The room is still there. Press Enter to end it: '
  read -r _
fi
exit "$ended"
