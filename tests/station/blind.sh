#!/bin/sh
# A camera that does not see: what it says of that is told, and no longer once it is over; that it is dark, only while a case is
# open in its room, since a camera may stand in the dark at night.
#   blind.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
# A program that says what is written to its file.
camera() { # NAME ROOM
	printf '#!/bin/sh\necho '\''{"v":1,"hello":{"driver":"camera","device":"none"}}'\''\nexec tail -n +1 -f %s\n' "$root/$1.says" >"$root/$1"
	chmod +x "$root/$1"
	: >"$root/$1.says"
	printf '[room %d]\nname = Room of %s\n[driver %s]\ncommand = %s\nroom = %d\n' "$2" "$1" "$1" "$root/$1" "$2" >>"$data/station.ini"
}
says() { # NAME WORD: it goes on saying other things afterwards
	printf '{"v":1,"fault":{"code":"%s","text":"words of %s"}}\n' "$2" "$2" >>"$root/$1.says"
}
command -v curl >/dev/null || skip 'curl is not here'
port=$(/usr/bin/python3 -c 'import socket
s = socket.socket()
s.bind(("127.0.0.1", 0))
print(s.getsockname()[1])')
told() { # NAME ROOM WORD: on the board of that room
	curl -s -m 1 "http://127.0.0.1:$port/events?room=$2" | grep '^data:.*"view"' | tail -n 1 | grep -q "Scanner $1 of Room of $1: words of $3"
}
printf '[site]\nletters = BC\n[board]\nstart = yes\nport = %s\n' "$port" >"$data/station.ini"
camera night 1
camera cap 2
start
says cap covered
soon 'a lens that is covered is told' 'told cap 2 covered'
says night dark
says cap over
soon 'and no longer once it is over' '! told cap 2 covered'
told night 1 dark && fail 'it is told that an empty room is dark'
echo 'ok that an empty room is dark is not told'
new_case=$(bt label cards --list | awk -F '\t' '$2 == 1 && /NEW CASE/ { print $1 }')
bt scan --scanner night "$new_case" >"$root/scan" || fail "no case was opened: $(cat "$root/scan")"
soon 'with a case open it is' 'told night 1 dark'
stop
python3 - "$data/record.db" >"$root/kept" <<'PY'
import json, sqlite3, sys
for (text,) in sqlite3.connect(sys.argv[1]).execute("SELECT payload FROM event WHERE kind = 'scanner-fault'"):
    print(json.loads(text)["said"]["what"])
PY
[ "$(cat "$root/kept")" = scanner-covered ] || fail "kept is otherwise: $(cat "$root/kept")"
echo 'ok the record has the covered lens alone'
