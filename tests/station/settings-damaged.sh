#!/bin/sh
# A settings file that is wrong, cut off, lost or no file: the station starts with what was sound last, is the same station, and says so.
#   settings-damaged.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
check() { timeout 10 "$bin/bandtallyd" --data "$data" --check; }
expect() { # WORDS: what the status says, with the case as it was
	bt status >"$root/out"
	grep -q "FAULT: .*$1" "$root/out" || fail "no fault '$1': $(cat "$root/out")"
	grep -q 'room 1, Theatre 1: case 1' "$root/out" || fail "the case is gone: $(cat "$root/out")"
	echo "ok $1"
}
unsound() { # WORDS
	! check >"$root/out" 2>&1 || fail "a check finds it sound: $1"
	grep -q "$1" "$root/out" || fail "no '$1': $(cat "$root/out")"
}
sound() {
	soon 'no fault is said' '! bt status | grep FAULT'
	check >"$root/out" 2>&1 || fail "not sound: $(cat "$root/out")"
}
printf '[site]\nletters = HU\nname = Hand unit\n[station]\nnumber = 7\n[room 1]\nname = Theatre 1\n' >"$root/station.ini"
printf '[scanner hand-1]\nvendor = 1209\nproduct = b0c0\nroom = 1\n' >"$root/scanners.ini"
cp "$root/station.ini" "$root/scanners.ini" "$data"
start
bt label cards --list >"$root/cards"
bt scan "$(awk -F '\t' '$3 == "NEW CASE" { print $1 }' "$root/cards")" >/dev/null
sound
stop

# --- scanners.ini: each as it was found to stop a station, and mended while it runs
begun=
for lines in '[scanner hand-1]\nvendor = 12' '[scanner Hand-1]\nvendor = 1209\nproduct = b0c0\nroom = 1\n' \
	'[scanner hand-1]\nvendor = 1209\nproduct = b0c0\nroom = 1x\n' '[scan' '[scanner hand-1]\nvendor = 1209\nroom = 1\n' '\0001\0200\0377' ''; do
	printf %b "$lines" >"$data/scanners.ini"
	start
	expect 'scanners.ini.*settings that it had before'
	unsound 'scanners.ini'
	cmp "$root/scanners.ini" "$data/settings-sound/scanners.ini" || fail 'the list that was sound is not kept'
	if [ -z "$begun" ]; then
		cp "$root/scanners.ini" "$data/scanners.ini"
		sound
		begun=1
	fi
	stop
done
rm "$data/scanners.ini"
mkfifo "$data/scanners.ini"
start
expect 'scanners.ini: is no file, but a pipe'
unsound 'scanners.ini: is no file, but a pipe'
stop
rm "$data/scanners.ini" "$data/settings-sound/scanners.ini"
printf '[scanner hand-1]\nvendor = 12' >"$data/scanners.ini"
start
expect 'scanners.ini line 2.*no earlier list of scanners'
stop
cp "$root/scanners.ini" "$data"

# --- labels.ini
printf '[medium small]\ndpi = 204\n' >"$data/labels.ini"
start
expect 'labels.ini line 2: dpi'
printf '[medium small]\ndpi = 203\nlabel_mm = 57 x 32\n' >"$data/labels.ini"
sound
stop

# --- what can be read, and cannot be meant: the station starts, and a check says it
unmeant() { # LINES WORDS
	cp "$root/station.ini" "$data"
	printf %b "$1" >>"$data/station.ini"
	! check >"$root/out" 2>&1 || fail "a check finds it sound: $1"
	grep -q "station.ini: $2" "$root/out" || fail "no '$2': $(cat "$root/out")"
	echo "ok $2"
}
unmeant '[driver hand]\nroom = 1\n' '.driver hand. has no command'
unmeant '[driver hand]\ncommand = scan-hand /dev/x\n' '.*scan-hand is no program that can be started'
unmeant '[driver hand]\ncommand = /usr/bin/none at all\n' '.*/usr/bin/none is no program'
unmeant '[driver hand]\ncommand = scan-replay /dev/null\nroom = 2\n' '.driver hand. room = 2: there is no .room 2'
unmeant '[room 2]\nname = Theatre 1\n' 'rooms 1 and 2 are both called Theatre 1'
unmeant '[labels]\nmedia = nope\n' '.labels. media = nope: there is no .medium nope'
printf '[labels]\nmedia = small\n[room 2]\nname = Theatre 2\n[driver hand]\ncommand = scan-replay /dev/null\nroom = 2\n' | cat "$root/station.ini" - >"$data/station.ini"
check >"$root/out" 2>&1 || fail "not sound: $(cat "$root/out")"
! TZ=Europe/Nowhere check >"$root/out" 2>&1 || fail 'a zone that is none is sound'
grep -q "TZ is 'Europe/Nowhere'" "$root/out" || fail "$(cat "$root/out")"
for zone in '' :Europe/Berlin CET-1CEST '<+0330>-3:30' UTC; do
	TZ=$zone check >"$root/out" 2>&1 || fail "zone $zone: $(cat "$root/out")"
done
printf '[driver hand]\nroom = 3\ncommand = scan-replay /dev/null\n' | cat "$root/station.ini" - >"$data/station.ini"
start
bt status >"$root/out"
grep -q 'FAULT: .*driver hand. room = 3: there is no .room 3.* goes on all the same' "$root/out" || fail "nothing is said: $(cat "$root/out")"
stop
cp "$root/station.ini" "$data"
printf '[scanner a]\nvendor = 1209\nproduct = b0c0\nroom = 7\n' >"$data/scanners.ini"
start
expect '.scanner a. room = 7: there is no .room 7. in station.ini'
unsound '.scanner a. room = 7: there is no .room 7. in station.ini'
cp "$root/scanners.ini" "$data"
sound
stop

# --- station.ini: emptied, cut, lost, a pipe
: >"$data/station.ini"
start
expect 'station.ini is empty'
unsound 'station.ini is empty'
bt label cards --list | cmp - "$root/cards" || fail 'its cards are of another site'
stop
printf '[site]\n' >"$data/station.ini"
start
expect 'does not say \[site\] letters, which were HU'
unsound 'does not say \[site\] letters, which were HU'
stop
rm "$data/station.ini"
mkfifo "$data/station.ini"
start
expect 'station.ini: is no file, but a pipe'
stop
rm "$data/station.ini"
start
expect 'station.ini is gone'
stop
cmp "$root/station.ini" "$data/settings-sound/station.ini" || fail 'what was sound is not kept'

# --- other letters, as somebody wrote them
printf '[site]\nletters = BC\n[station]\nnumber = 7\n[room 1]\nname = Theatre 1\n' >"$data/station.ini"
start
expect 'of site BC; it was of site HU: every badge, card and label'
stop
cp "$root/station.ini" "$data"
start
expect 'of site HU; it was of site BC'
stop
start
sound
stop

# --- certificates of the board elsewhere that are not there: said where a monitor looks, and the count goes on
cp "$data/station.ini" "$root/before"
printf '[board]\nstart = yes\nport = 0\n[board elsewhere]\nstart = yes\naddress = 127.0.0.1\nport = 0\nhosts = board.example\ncertificate = none.pem\nkey = none.key\nclients = none.ca\n' \
	>>"$data/station.ini"
start
soon 'the board elsewhere cannot be opened' 'bt status | grep "FAULT: .*board elsewhere: certificate .*none.pem"'
stop
cp "$root/before" "$data/station.ini"
start
sound
stop
