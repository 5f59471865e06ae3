#!/bin/sh
# A spare scanner, bound to a room by a card (rule 18): what it reads is entered there, its faults are told there, and it
# stays so when the station starts again. Another room's card of any other kind enters nothing.
#   spare.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
make_scanner spare
cat >"$data/station.ini" <<X
[site]
letters = BC
[room 1]
name = Theatre 1
[room 2]
name = Theatre 2
[board]
start = no
[driver spare]
command = $root/driver
room = 1
X
printf '[scans]\nburst_ms = 0\n' >"$data/policy.ini"
exec 9<>"$root/lines"
there() { soon 'the scanner is there' "bt status | grep -q 'scanner spare, room $1.*: running'"; }
card() { bt label cards --room "$1" --list | awk -F '\t' -v m="$2" '$3 == m { print $1 }'; }
send() { printf '{"v":1,"scan":{"aim":"]C0","data":"%s"}}\n' "$1" >&9; }
start
there 1
send "$(card 2 'NEW CASE')"
soon 'a card of another room enters nothing and says so' 'bt sheet --room 1 --json | grep -q "card of Theatre 2"'
soon 'in both rooms' 'bt sheet --room 2 --json | grep -q "card of Theatre 2"'
bt sheet --room 2 | grep -q 'case 1' && fail 'it opened a case in the other room'
send "$(card 2 'SPARE SCANNER')"
soon 'SPARE SCANNER of room 2 binds it, and room 2 is told' 'bt sheet --room 2 --json | grep -q "now a spare of Theatre 2"'
send "$(card 2 'NEW CASE')"
soon 'what it reads is entered in room 2' 'bt sheet --room 2 | grep -q "case 1"'
soon 'and it is listed there' 'bt status | grep -q "scanner spare, room 2: running"'
printf '{"v":1,"fault":{"code":"partial","text":"half a code"}}\n' >&9
soon 'a fault of it is told as one of room 2' 'grep -q "scanner spare of Theatre 2: half a code" "$root/log"'
stop
start
there 2
send "$(card 2 'AWAKE PATIENT')"
soon 'it is still bound when the station has started again' 'bt sheet --room 2 --json | grep -q "\"awake\":true"'
send "$(card 1 'SPARE SCANNER')"
send "$(card 1 'NEW CASE')"
soon 'the card of its own room takes it back' 'bt sheet --room 1 | grep -q "case 2"'
stop
bt audit verify | grep -q 'numbered without a gap' || fail 'the record does not hold'
echo 'ok the record holds'
