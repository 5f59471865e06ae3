#!/bin/sh
# A station that starts from its snapshot shows what it showed, and one whose snapshot is no good shows it too and says
# so to the journal alone.
#   snapshot.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
start
digit=$(bt label digits --list | awk -F '\t' '$3 == "right index finger" { print $1; exit }')
bt scan "$digit" >/dev/null || [ $? = 4 ] || fail 'a digit card is refused'
shown() { bt sheet --json | /usr/bin/python3 -c 'import json, sys
o = json.load(sys.stdin)
print([o[k] for k in o if k in ("case", "case_number", "number", "items", "room", "question")], [(d.get("digit"), d.get("state"), d.get("name")) for d in o.get("digits", [])])'; }
before=$(shown)
echo "$before" | grep -q index || fail "the sheet does not show the digit: $before"
stop
[ "$(stat -c %a "$data/snapshot")" = 600 ] || fail 'there is no snapshot, or others can read it'
: >"$root/log"
start
[ "$(shown)" = "$before" ] || fail "from the snapshot it shows $(shown)"
grep -q snapshot "$root/log" && fail 'the snapshot was not taken'
echo 'ok it shows what it showed'
bt scan "$(bt label cards --list | awk -F '\t' '$3 == "AWAKE PATIENT" { print $1; exit }')" >/dev/null
kill -KILL "$daemon"
wait "$daemon" || true
start
[ "$(shown)" = "$before" ] || fail "from the snapshot and what followed it shows $(shown)"
grep -q snapshot "$root/log" && fail 'the snapshot was not taken after a crash'
stop
printf X | dd of="$data/snapshot" bs=1 seek=400 conv=notrunc status=none
start
[ "$(shown)" = "$before" ] || fail "from the record it shows $(shown)"
grep -q 'the snapshot is thrown away' "$root/log" || fail 'a changed snapshot was taken, or not told'
bt status | grep -qi snapshot && fail 'the people in the room read of it'
[ ! -e "$data/snapshot" ] || fail 'it is asked again'
stop
[ -e "$data/snapshot" ] || fail 'there is no new one'
echo 'ok one that was changed is thrown away, and another written'

# An event that a start from the snapshot does not read: it goes on as before, and a check finds it, with the snapshot and without.
all() { (cd "$data" && find . -type f -exec sha256sum {} + | sort); }
check() { "$bin/bandtallyd" --data "$data" --check >"$root/said" 2>&1; }
check || fail "--check says: $(cat "$root/said")"
/usr/bin/python3 - "$data/record.db" <<'END'
import sqlite3, sys
db = sqlite3.connect(sys.argv[1])
trigger = db.execute("SELECT sql FROM sqlite_master WHERE name = 'event_no_update'").fetchone()[0]
db.execute("DROP TRIGGER event_no_update")
db.execute("UPDATE event SET payload = 'x' WHERE seq = (SELECT min(seq) FROM event WHERE kind = 'setting')")
db.execute(trigger)
db.commit()
END
for with in 'the snapshot' 'one that was changed' 'none'; do
	case $with in one*) printf X | dd of="$data/snapshot" bs=1 seek=400 conv=notrunc status=none ;; none) mv "$data/snapshot" "$root/" ;; esac
	was=$(all)
	check && fail "with $with --check did not read each event"
	grep -q 'not sound: event [0-9]*: its ' "$root/said" || fail "with $with --check says: $(cat "$root/said")"
	[ "$(all)" = "$was" ] || fail "with $with --check wrote something"
done
echo 'ok --check reads each event, whatever a start would read, and leaves everything as it is'
