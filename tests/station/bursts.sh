#!/bin/sh
# Scans that a cordless scanner had stored arrive at once after a silence: they are held, the room is asked when nothing
# else is, YES enters them as late, NO throws them away and the record says so; the clock of a digit among them runs at
# once (rules 3, 17, 19). So does a single one that is old when it comes, by its own time. A restart loses none. YES of
# another room is no answer (rule 18).
#   bursts.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
make_scanner stored
cat >"$data/station.ini" <<X
[site]
letters = BC
[room 1]
name = Theatre 1
[room 2]
name = Theatre 2
[driver cordless]
command = $root/driver
room = 1
X
cat >"$data/policy.ini" <<X
[scans]
gap_s = 1
burst_ms = 200
X
exec 9<>"$root/lines"
start
soon 'the scanner is there' 'bt status | grep -q "scanner cordless, room 1.*: running"'
code() { bt label cards --room "${2:-1}" --list | awk -F '\t' -v m="$1" '$3 == m { print $1 }'; }
digit() { bt label digits --list | awk -F '\t' -v m="$1" '$3 == m { print $1 }'; }
new=$(code 'NEW CASE') awake=$(code 'AWAKE PATIENT') yes=$(code YES) no=$(code NO) yes2=$(code YES 2)
one=$(code 'DRESSING ALREADY ON')
thumb=$(digit 'left thumb') index=$(digit 'left index finger')
send() { for c in "$@"; do printf '{"v":1,"scan":{"aim":"]C0","data":"%s"}}\n' "$c"; done >&9; }

sleep 1.2
send "$new"
soon 'one scan after a silence is entered' 'bt sheet | grep -q "case 1"'
sleep 1.2
send "$awake" "$one" "$thumb"
soon 'three at once are held and the room is asked, by name' 'bt sheet --json | grep -q "3 scans were stored: AWAKE PATIENT[,;] .* left thumb (oldest"'
bt sheet --json | grep -q '"awake":false' || fail 'a held scan was entered before anyone answered'
bt sheet --json | grep -q '"question":"stored"' || fail 'it is not the question of the board'
bt sheet --json | grep -q '"state":"maybe-on"' || fail 'the clock of the held digit does not run'
echo 'ok the clock of the digit runs, it is the one question'
sleep 0.4
send "$yes2"
soon 'YES of another room answers nothing here' 'bt sheet --room 2 --json | grep -q "card of Theatre 2"'
bt sheet --json | grep -q '"awake":false' || fail 'YES of another room entered what was held'
send "$yes"
soon 'YES enters them' 'bt sheet --json | grep -q "\"awake\":true"'
bt case show 1 --json | grep -q '"label":"Late"' || fail 'the entries are not marked late'
echo 'ok they are marked late'
soon 'what one of them asks is asked then' 'bt sheet --json | grep -q "\"question\":\"is-on\""'
sleep 1.2
send "$awake" "$awake"
soon 'two more are held while it is open' 'bt sheet --json | grep -q "2 stored scans came"'
bt sheet --json | grep -q '"question":"is-on"' || fail 'two questions are open at once'
sleep 0.4
send "$no"
soon 'NO answers what the board asked, and the stored ones are asked about then' 'bt sheet --json | grep -q "\"question\":\"stored\""'
bt sheet --json | grep -q '2 scans were stored' || fail 'NO to another question threw stored scans away'
sleep 2.2 # NO again within two seconds is the same read; after that NEXT stands between two equal answers
send "$(code NEXT)"
sleep 0.6
send "$no"
soon 'NO throws them away and says so' 'bt sheet --json | grep -q "2 stored scans were thrown away: AWAKE PATIENT and AWAKE PATIENT"'
bt sheet --json | grep -q '"awake":true' || fail 'a scan that was thrown away was entered'
aged() { # SECONDS CODE: made so long ago
	ms=$(awk -v s="$1" '{ printf "%d", ($1 - s) * 1000 }' /proc/uptime)
	printf '{"v":1,"scan":{"aim":"]C0","data":"%s","ms":%s}}\n' "$2" "$ms" >&9
}
aged 0 "$awake"
soon 'a fresh scan is entered' 'bt sheet --json | grep -q "\"awake\":false"'
aged 25 "$awake"
soon 'one that was made long before it came is asked about, though it is alone' 'bt sheet --json | grep -q "A scan was stored: AWAKE PATIENT (made"'
bt sheet --json | grep -q '"awake":false' || fail 'an old scan was entered before anyone answered'
kill -KILL "$daemon"
wait "$daemon" || true
start
bt sheet --json | grep -q '"question":"stored"' || fail 'what was held is not asked about after a restart'
echo 'ok a station that was killed holds it and asks'
sleep 0.4
send "$yes"
soon 'YES enters it as late' 'bt sheet --json | grep -q "\"awake\":true"'
aged 600 "$index"
soon 'a digit card that is ten minutes old runs since then' 'bt sheet --json | grep -q "\"text\":\"10 min\""'
sleep 1.2
send "$awake" "$one"
sleep 0.1 # until the program of the scanner has handed them on
stop
start
bt sheet --json | grep -q '3 scans were stored: left index' || fail 'what came just before the end is lost'
echo 'ok what came just before the end is held and asked about'
stop
sqlite3 "$data/record.db" "SELECT payload FROM event WHERE kind='refused'" | grep -q 'thrown-away' ||
	fail 'the record does not say that scans were thrown away'
echo 'ok the record says so'
bt audit verify | grep -q 'numbered without a gap' || fail 'the record does not hold'
echo 'ok the record holds'
