#!/bin/sh
# The wall's own start (config/kiosk/start) on an X server without a screen: what stands there before the station, a ticket of its
# own, and that the board comes back when the browser, its page, its cookie or the station was gone.
#   kiosk-start.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/../station/common"
for program in Xvfb chromium matchbox-window-manager unclutter-xfixes xwininfo xrandr; do
	command -v $program >/dev/null || skip "$program is not installed"
done
here=$(cd "$(dirname "$0")" && pwd)
# Chromium keeps its sandbox only as another user than root.
as_user=
if [ "$(id -u)" = 0 ]; then
	as_user='setpriv --reuid nobody --regid nogroup --clear-groups'
	chown -R nobody "$root"
	$as_user test -x "$bin/bandtallyd" || skip 'another user cannot reach the programs'
fi
$as_user mkdir -m 700 "$root/place" "$root/screen" "$root/own"
x_server() { exec Xvfb "$@" -screen 0 1920x1080x24 -nolisten tcp -fbdir "$root/screen" 2>>"$root/xvfb"; }
x_server -displayfd 3 3>"$root/display" &
x=$!
kiosk=
at_end() {
	[ -z "$kiosk" ] || kill "$kiosk" 2>/dev/null || true
	[ -z "$kiosk" ] || wait "$kiosk" || true
	kill $x 2>/dev/null || true
	wait
}
soon 'there is an X server' 'test -s "$root/display"'
DISPLAY=:$(cat "$root/display")
export DISPLAY HOME="$root/own" XDG_RUNTIME_DIR="$root/own" KIOSK_PLACE="$root/place" KIOSK_SETTINGS="$root/kiosk.ini"
printf '#!/bin/sh\nexec %s/bandtally --data %s "$@"\n' "$bin" "$data" >"$root/own/bandtally"
chmod 755 "$root/own/bandtally"
PATH="$root/own:$PATH"
echo 'room = 2' >"$root/kiosk.ini"
port=$(/usr/bin/python3 -c 'import socket
s = socket.socket()
s.bind(("127.0.0.1", 0))
print(s.getsockname()[1])')
settings() {
	printf '[site]\nletters = BC\n[room 1]\nname = Theatre 1\n[room 2]\nname = Theatre 2\n[board]\nstart = yes\nport = %s\n%s\n' "$port" "$1" \
		>"$data/station.ini"
}
settings ''
# As the unit does: started again when it ends, whole.
cat >"$root/unit" <<'EOF'
trap 'pkill -KILL -s $now; exit' TERM
while :; do
	setsid "$1" 2>>"$2" &
	now=$!
	echo $now >"$3"
	wait $now
	pkill -KILL -s $now
	sleep 1
done
EOF
kill $x
wait
$as_user sh "$root/unit" "$here/../../config/kiosk/start" "$root/said" "$root/now" &
kiosk=$!
sleep 3 # as X needs longer than this at boot
x_server "$DISPLAY" &
x=$!
# shellcheck disable=SC2086
begin() { start $as_user; }
window() { xwininfo -root -tree | grep -a '("chromium' | grep -av ' 10x10+'; }
within() { # SECONDS SENTENCE COMMAND
	began=$(date +%s)
	until eval "$3" >/dev/null 2>&1; do
		[ $(($(date +%s) - began)) -lt "$1" ] || {
			window || true
			cat "$root/said"
			fail "not in $1 s: $2"
		}
		sleep 0.3
	done
	echo "ok $2 ($(($(date +%s) - began)) s)"
}
holds() { # SENTENCE COMMAND
	eval "$2" || fail "not so: $1"
	echo "ok $1"
}
waits() { window | grep -aq '"[0-9:]* - Chromium"'; }
board() { window | grep -aq '"Count board [0-9:]* - Chromium"'; }
cookies() { grep -o '"hash"' "$data/cookies" | wc -l; }
picture() { /usr/bin/python3 "$here/picture.py" "$@"; }
browser() { pgrep -s "$(cat "$root/now")" -f -- '--user-data-dir' | head -n 1; }
pages() { pgrep -s "$(cat "$root/now")" -f -- '--type=renderer'; }
within 60 'before the station answers, a page says that it is awaited' waits
sleep 1
picture "$root/screen/Xvfb_screen0" "$root/waits.png"
holds 'over the whole screen' 'window | grep -aq "1920x1080+0+0"'
holds 'X was waited for' '! grep -q "started anew" "$root/said"'
begin
within 60 'the board of the room comes by itself' board
holds 'with a ticket' 'test "$(cookies)" = 1'
holds 'which nobody else can read' 'test "$(stat -c %a "$root/place/board.html")" = 600'
holds 'over the whole screen' 'window | grep -aq "1920x1080+0+0"'
sleep 3
picture "$root/screen/Xvfb_screen0" "$root/board.png"

kill -9 "$(browser)"
sleep 0.5
within 60 'the browser is killed: the board comes back' board
holds 'with a ticket of its own' 'test "$(cookies)" = 2'
sleep 3
picture "$root/screen/Xvfb_screen0" "$root/again.png" "$root/board.png"

was=$(browser)
stop
sleep 5
picture "$root/screen/Xvfb_screen0" "$root/without.png"
begin
sleep 8
holds 'the station was gone for a while: the same browser goes on' 'test "$(browser)" = "$was" && board'
picture "$root/screen/Xvfb_screen0" "$root/found.png" "$root/board.png"

pages | xargs kill -9
within 90 'its page dies: the browser is started anew' 'test "$(cookies)" = 3'
within 60 'and shows the board' board
holds 'and it says why' 'grep -q "the page does not go on" "$root/said"'
holds 'a page has twice as long now' 'test "$(cat "$root/place/patience")" = 40'
within 90 'until one has lived for a minute' '! test -e "$root/place/patience"'

stop
rm "$data/cookies"
begin
within 90 'its cookie is let in no longer: it gets another' 'test -e "$data/cookies" && test "$(cookies)" = 1'
within 60 'and shows the board' board

settings 'typing = no'
stop
begin
kill -9 "$(browser)"
within 90 'without a ticket to be had the board is looked at' 'grep -q "looked at without a ticket" "$root/said"'
within 60 'all the same' board
[ -z "${BANDTALLY_PICTURES:-}" ] || { mkdir -p "$BANDTALLY_PICTURES" && cp "$root"/*.png "$BANDTALLY_PICTURES"; }
