# shellcheck shell=sh
# The demo's own station: a fresh data folder, the real programs, one scanner that plays what the camera reads.

# Names the free port that the board is to have; 0 lets the kernel choose.
board_port() {
	if grep -qs ': [0-9A-F]*:20E1 [0-9A-F]*:[0-9A-F]* 0A ' /proc/net/tcp /proc/net/tcp6; then echo 0; else echo 8417; fi
}

write_settings() {
	[ -x "$bin/bandtally-board" ] && board=yes || board=no
	mkfifo "$folder/camera" "$folder/bench"
	cp "$source/config/policy.ini" "$folder/policy.ini"
	cat >"$folder/station.ini" <<-END
		[site]
		letters = HU
		name = Hand unit (invented)

		[room 1]
		name = Theatre 1

		[room 2]
		name = Minor procedures
		single_operator = yes

		[room 9]
		name = Stores
		kind = stores

		[driver demo-camera]
		command = scan-replay --speed 0 $folder/camera
		room = 1

		[driver bench-camera]
		command = scan-replay --speed 0 $folder/bench
		room = 9

		[board]
		start = $board
		port = $(board_port)
	END
	[ -z "$queue" ] || printf '\n[printer]\nqueue = %s\n' "$queue" >>"$folder/station.ini"
	[ ${#folder} -le 90 ] || surprise "the path of the demo's folder has more than 90 letters: set TMPDIR to a shorter one"
}

start_station() {
	exec 9<>"$folder/camera" 8<>"$folder/bench"
	"$bin/bandtallyd" --data "$folder" 2>>"$folder/station.log" 9<&- 8<&- &
	station=$!
	until_true 10 asks status >/dev/null || surprise "the station did not start: $(tail -n 1 "$folder/station.log")"
	until_true 10 scanner_is_there || surprise "the station's scanner did not start"
}

asks() { "$bin/bandtally" --data "$folder" "$@" 2>/dev/null; }
scanner_is_there() { [ "$(asks status | grep -c 'scanner .*-camera, room .: running')" = 2 ]; }

# until_true SECONDS COMMAND…
until_true() {
	tries=$(($1 * 20))
	shift
	until "$@"; do
		[ $((tries -= 1)) -gt 0 ] || return 1
		kill -0 "$station" 2>/dev/null || return 1
		sleep 0.05
	done
}

# The station ends by itself when it is asked to; only its own process is ever ended.
stop_station() {
	[ -n "${station:-}" ] || return 0
	kill -TERM "$station" 2>/dev/null || true
	wait "$station" 2>/dev/null && ended=0 || ended=$?
	station=
	return "$ended"
}

# answered SINCE_MS: whether the newest reply of $room came after that moment; then $verdict, $said and $next hold it.
answered() {
	view=$(asks sheet --room "$room" --json) || return 1
	ago=$(printf '%s' "$view" | sed -n 's/.*"recent":\[{"ago_ms":\([0-9]*\),.*/\1/p')
	now=$(printf '%s' "$view" | sed -n 's/.*"at_ms":\([0-9]*\).*/\1/p')
	[ -n "$ago" ] && [ $((now - ago)) -ge "$1" ] || return 1
	said=$(printf '%s' "$view" | sed -n 's/.*"recent":\[{"ago_ms":[0-9]*,"said":"\([^"]*\)".*/\1/p')
	verdict=$(printf '%s' "$view" | sed -n 's/.*"recent":\[{"ago_ms":[0-9]*,"said":"[^"]*","verdict":"\([a-z]*\)".*/\1/p')
	next=$(printf '%s' "$view" | sed -n 's/.*"next":"\([^"]*\)".*/\1/p')
}

# send VERDICT PATTERN: hands what the camera read to the station, as the camera wrote it, and checks the reply.
send() {
	since=$(date +%s%3N)
	if [ "$room" = 9 ]; then printf '%s\n' "$lines" >&8; else printf '%s\n' "$lines" >&9; fi
	until_true 10 answered "$since" || surprise "the station gave no reply to $data"
	printf '    %s%s:%s %s\n' "$(colour_of "$verdict")" "$verdict" "$plain" "$said"
	printf '    %snext: %s%s\n' "$faint" "$next" "$plain"
	[ "$verdict" = "$1" ] || surprise "the station said '$verdict' where '$1' belongs"
	# shellcheck disable=SC2254
	case $said in
	$2) ;;
	*) surprise "the station said '$said' where '$2' belongs" ;;
	esac
}
