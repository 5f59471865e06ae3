#!/bin/sh
# Whatever lies in the data folder, the station starts, says what it could not follow, and says: count by hand.
#   always-starts.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
command -v python3 >/dev/null || skip 'python3 is not installed'
expect() { # CODE WORDS COMMAND…: the exit code, and words that the answer must hold
	code=$1 words=$2
	shift 2
	got=0
	"$@" >"$root/out" 2>&1 || got=$?
	[ "$got" = "$code" ] || fail "exit $got instead of $code: $*: $(cat "$root/out")"
	grep -q -- "$words" "$root/out" || fail "no '$words' in: $(cat "$root/out")"
	echo "ok $words"
}
check() { "$bin/bandtallyd" --data "$data" --check; }
card() { bt label cards --list "$@" | awk -F '\t' -v w="$words_of_card" '$3 == w { print $1 }'; }
code_of() { words_of_card=$1; shift; card "$@"; }
digit() { bt label digits --list "$@" | awk -F '\t' '$3 == "right index finger" { print $1 }'; }
# What a fault of an earlier version stored: a further event at the end, chained as it must be.
add_event() {
	python3 - "$data/record.db" "$1" <<'PY'
import hashlib, json, sqlite3, sys
db = sqlite3.connect(sys.argv[1])
seq, before = db.execute('SELECT seq, hash FROM event ORDER BY seq DESC LIMIT 1').fetchone()
event = json.loads(sys.argv[2])
event['seq'] = seq + 1
text = json.dumps(event, sort_keys=True, separators=(',', ':'))
db.execute('INSERT INTO event VALUES (?,?,?,?,?,?)', (seq + 1, event.get('case', 0), event['kind'], '', text,
	hashlib.sha256(before + text.encode()).digest()))
db.commit()
print(seq + 1)
PY
}
start
bt catalogue import "$source/tests/replay/catalogue.csv" >/dev/null
bt staff add --registered practitioner SCRUB-1 >/dev/null
new=$(code_of 'NEW CASE')
stop

# --- an event that cannot be read, and one that cannot be applied
harmless=$(add_event '{"boot":1,"boot_ms":5,"kind":"refused","room":-5,"v":1,"wall_ms":6}')
start
bt status | grep -q 'DO NOT TRUST' && fail 'a refusal that cannot be read changes nothing'
expect 1 "event $harmless: its text cannot be read" bt audit verify
expect 1 'NOT whole' bt audit verify
stop
line=$(add_event '{"boot":1,"boot_ms":5,"kind":"line-set","line":{"codes":["09506000134352"],"contents":{},"identity":"none","key":"BAND-M","marked":1,"name":"band","per_pack":1,"role":"tourniquet","visible":1},"v":1,"wall_ms":6}')
expect 1 "event $line (line-set) could not be followed" check
start
expect 0 "DO NOT TRUST THE STATION NOW: Event $line (line-set) could not be followed. .*Count by hand" bt status
expect 0 "Event $line (line-set) could not be followed" bt sheet
bt staff add --registered practitioner CIRC-2 >/dev/null
expect 0 "Event $line (line-set) could not be followed" bt status
expect 1 "event $line (line-set) could not be followed" bt audit verify
expect 2 'WHAT.* is missing' bt audit settle "$line"
expect 1 'is not among' bt audit settle 999 'no such thing'
expect 0 "event $line is settled" bt audit settle "$line" 'the line was imported again with its old key'
bt status | grep -q 'DO NOT TRUST' && fail 'it was dealt with, and is still said'
stop
start
bt status | grep -q 'DO NOT TRUST' && fail 'that it was dealt with was forgotten'

# --- of a case: it goes on, and does not end reconciled
bt scan "$new" >/dev/null
case_no=$(bt status --json | sed -n 's/.*"last_case":\([0-9]*\).*/\1/p')
stop
item=$(add_event "{\"boot\":1,\"boot_ms\":5,\"case\":$case_no,\"digit\":77,\"kind\":\"digit-on\",\"room\":1,\"v\":1,\"wall_ms\":6}")
start
expect 0 "Event $item (digit-on) of case $case_no could not be followed" bt sheet
expect 0 'count by hand on the paper sheet; it does not end reconciled' bt sheet
expect 0 "EVENT $item COULD NOT BE FOLLOWED" bt case show "$case_no" --json
cancel=$(code_of CANCEL) yes=$(code_of YES)
bt scan "$cancel" >/dev/null || true
bt scan "$yes" >/dev/null
bt status | grep -q "case $case_no could" && fail 'the case has ended'
stop

# --- of a later format: nothing of it is guessed
cp "$data/record.db" "$root/now.db"
add_event '{"boot":1,"boot_ms":5,"kind":"line-set","v":99,"wall_ms":6}' >/dev/null
expect 1 'format 99.*later' "$bin/bandtallyd" --data "$data"
expect 1 'format 99.*later' check
cp "$root/now.db" "$data/record.db"

# --- settings that cannot be read, and a room that is not in them any more
printf '[room 1]\nname = Theatre 1\n[room 2]\nname = Theatre 2\n' >"$data/station.ini"
start
expect 4 'Is a tourniquet on it now' bt scan --room 2 "$(digit --room 2)"
stop
printf '[room 1]\nname = Theatre 1\n[colour]\nof = later\n' >"$data/station.ini"
expect 1 'station.ini line 4' check
start
expect 0 'FAULT: .*station.ini line 4.*settings that it had before' bt status
expect 0 'room 2, Theatre 2: case' bt status
stop
printf '[reminders]\nfirst_reminder_min = soon\n' >"$data/policy.ini"
printf '[room 1]\nname = Theatre 1\n' >"$data/station.ini"
start
expect 0 'FAULT: .*policy.ini line 2' bt status
stop
rm "$data/policy.ini"
expect 1 'Room 2 is not in station.ini, but case .*tourniquet on: right index finger' check
start
expect 0 'Room 2 is not in station.ini, but case .*tourniquet on: right index finger' bt status
stop
for kind in stores audit; do # it goes on there until its case has ended
	printf '[room 1]\nname = Theatre 1\n[room 2]\nname = Theatre 2\nkind = %s\n' $kind >"$data/station.ini"
	expect 1 'Room 2 is .* in station.ini, but case .*tourniquet on: right index finger' check
	start
	expect 0 'Room 2 is .* in station.ini, but case .*tourniquet on: right index finger' bt status
	expect 0 '"number":2,"single":false,"stores":false' bt status --json
	expect 4 'Right index finger: Is a tourniquet on it now' bt scan --room 2 "$(digit --room 2)"
	stop
done
rm -r "$data/settings-sound"
printf 'nonsense\n' >"$data/station.ini"
start
expect 0 'There are no earlier settings' bt status
stop
rm "$data/station.ini"

# --- a record that is none, and one whose end was changed
cp "$data/record.db" "$root/now.db"
printf 'damage' | dd of="$data/record.db" bs=1 seek=0 conv=notrunc 2>/dev/null
cp "$data/record.db" "$root/damaged.db"
expect 1 'the record is damaged' check
start
cmp "$data"/record-damaged-*.db "$root/damaged.db" || fail 'the damaged record was changed'
expect 0 'DO NOT TRUST.*lies in .*record-damaged-.*Count by hand' bt status
expect 0 'DO NOT TRUST' bt sheet
bt scan "$new" >/dev/null
expect 0 'DO NOT TRUST' bt status
expect 0 'numbered without a gap' bt audit verify
expect 0 'whole as far as it goes' bt audit verify
stop
expect 1 'record-damaged-' check
start
expect 0 'DO NOT TRUST' bt status
mv "$data"/record-damaged-*.db "$root/"
soon 'it is trusted once the file is gone' '! bt status | grep -q "DO NOT TRUST"'
stop
cp "$root/now.db" "$data/record.db"
python3 - "$data/record.db" <<'PY'
import sqlite3, sys
db = sqlite3.connect(sys.argv[1])
db.executescript("DROP TRIGGER event_no_update;"
	"UPDATE event SET payload = replace(payload, '\"wall_ms\":1', '\"wall_ms\":2') WHERE seq = (SELECT max(seq) FROM event)")
PY
cp "$data/record.db" "$root/changed.db"
start
cmp "$data"/record-damaged-*.db "$root/changed.db" || fail 'the changed record was changed again'
expect 0 'DO NOT TRUST.*record-damaged-' bt status
stop
rm "$data"/record-damaged-*.db

# --- a check writes nothing
mkdir "$root/fresh"
expect 0 'settings and record are sound' "$bin/bandtallyd" --data "$root/fresh" --check
[ -z "$(ls "$root/fresh")" ] || fail "a check wrote: $(ls "$root/fresh")"
beside() { "$bin/bandtallyd" --data "$root/fresh" --head "$root/fresh$1" --check 2>&1; }
beside /head | grep -q 'a weak place' || fail 'how far the record has come stands in its own folder, and nothing is said'
! beside -head | grep 'a weak place' || fail 'a folder whose name only begins alike was taken for the data folder'
expect 1 'first start makes it' "$bin/bandtallyd" --data "$root/none" --check
[ ! -e "$root/none" ] || fail 'a check made a folder'
start
kill -9 "$daemon"
wait "$daemon" 2>/dev/null || true
daemon=
(cd "$data" && sha256sum record.db* station.key && ls) >"$root/before"
expect 0 'settings and record are sound' check
(cd "$data" && sha256sum record.db* station.key && ls) | cmp - "$root/before" || fail 'a check changed the folder'
start
expect 0 'held by the station that runs' check
stop
# --- as the service has it: how far the record has come stands beside the data folder, and a check need not be told so
begun=$data
data=$root/served
mkdir "$data" "$data-head"
"$bin/bandtallyd" --data "$data" --head "$data-head" 2>>"$root/log" &
daemon=$!
soon 'the station runs' 'bt status'
stop
[ -n "$(ls "$data-head")" ] || fail 'the place beside the data folder is empty'
expect 0 'settings and record are sound' check
data=$begun
[ "$(stat -c %a "$data/record.db")" = 640 ] || fail "the record can be read by others: $(stat -c %a "$data/record.db")"
if [ "$(id -u)" -eq 0 ]; then
	chmod 0755 "$root" "$data"
	expect 1 'record.db: .*it belongs to root' setpriv --reuid 65534 --regid 65534 --clear-groups "$bin/bandtallyd" --data "$data" --check
fi
