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
