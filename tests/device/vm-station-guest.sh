#!/bin/sh
# Runs inside the emulated machine (vm-station): the station with two rooms, and scanners that come and go. '@ok' and
# '@FAILED' are results; '@plug', '@pull', '@type' and '@press' ask the host for what QEMU does.
work=$1 bin=$2 tests=$3 here=$4
. "$here/vm-guest.sh"
data=/tmp/station
start_devices vm-station-guest
ip link set lo up
mkdir $data
printf '[site]\nletters = BC\n[room 1]\nname = Theatre 1\n[room 2]\nname = Theatre 2\n[room 3]\nname = Theatre 3\n[board]\nstart = yes\nport = 8417\n' >$data/station.ini
cat >$data/scanners.ini <<X
[scanner usb]
vendor = 0627
product = 0001
serial = SN0001
room = 1
layout = us
[scanner hid]
vendor = 1209
product = b0c1
room = 2
layout = us
[scanner line]
vendor = 1209
product = b0c2
room = 2
mode = serial
prefix = 02
suffix = 03
[scanner taught]
vendor = 1209
product = b0c0
room = 3
X

bt() { "$bin/bandtally" --data $data "$@"; }
faults() { grep -c "bandtallyd: bt-scanner: scanner .*${1:-}" $data.log; } # each is written into the record as well, see the end
recorded() { sqlite3 $data/record.db "SELECT count(*) FROM event WHERE kind='scanner-fault'"; }
events() { bt status | sed -n 's/.*; \([0-9]*\) events.*/\1/p'; }
check() { # SENTENCE COMMAND…: within ten seconds
	sentence=$1 tries=0
	shift
	until "$@" >/tmp/saw 2>&1; do
		if [ $tries -eq 50 ]; then
			echo "@FAILED $sentence"
			sed 's/^/saw: /' /tmp/saw
			bt status | sed 's/^/status: /'
			return
		fi
		tries=$((tries + 1))
		sleep 0.2
	done
	echo "@ok $sentence"
}
says() { # PATTERN COMMAND…
	pattern=$1
	shift
	"$@" >/tmp/said
	cat /tmp/said
	grep -q "$pattern" /tmp/said
}
says_next() { # ROOM: between two equal cards, which would be one answer; what follows is no burst
	check 'NEXT is entered' sheet_says "$1" '"recent":\[{[^}]*Next\.'
	sleep 0.6
}
status_says() { says "$1" bt status; }
sheet_says() { says "$2" bt sheet --room "$1" --json; }
log_says() { grep -q "$1" $data.log; }
is() { # COMMAND WORD NUMBER: evaluated each time
	got=$("$1" "$2")
	[ "$got" = "$3" ] || { echo "$got, not $3" && false; }
}
ready() { # SCANNER: its program listens, and has heard the silence before a first code
	says '"device":"/[^}]*"name":"'"$1"'"' bt status --json >/dev/null || { sleep 0.2 && ready "$1"; }
	sleep 0.5
}
board_says() { # WHOSE EVENT: what a page (room=1, room=2, desk=1) is sent of this kind (view, status)
	curl -sN "http://127.0.0.1:8417/events?$1" >/tmp/page &
	page=$!
	n=0
	until grep -q "^event: $2" /tmp/page || [ $n -eq 30 ]; do
		n=$((n + 1))
		sleep 0.1
	done
	sleep 0.3
	kill $page
	grep -A 1 "^event: $2" /tmp/page | grep '"faults"'
}
room_shows() { says "$2" board_says "room=$1" view; }
room_does_not_show() { room_shows "$1" '"faults"' && ! grep "$2" /tmp/said; }
desk_shows() { says "$1" board_says desk=1 status; }
unplaced() { bt status | grep -c 'not running: /dev/'; }
card() { bt label cards --room "$1" --list | awk -F '\t' -v m="$2" '$3 == m { print $1 }'; }
driver_of() { pgrep -f "scan-[a-z]* --device .*$1" | head -n 1; }
started() { grep -c 'it is started again' $data.log; }
new_driver() { [ -n "$(driver_of "$1")" ] && [ "$(driver_of "$1")" != "$2" ]; }
free_to_all() { # NODE: nobody has grabbed it, so that a second program can
	"$bin/scan-handheld" --device "$1" --layout us >/tmp/free 2>&1 &
	second=$!
	n=0
	until grep -q '"hello"\|"fault"' /tmp/free || [ $n -eq 50 ]; do
		n=$((n + 1))
		sleep 0.1
	done
	kill $second
	grep -q '"hello"' /tmp/free
}
other_keyboards_free() {
	for node in /dev/input/event*; do
		case $(cat "/sys/class/input/${node##*/}/device/name") in
		'AT Translated Set 2 keyboard' | 'QEMU QEMU USB Keyboard') [ "$node" = "$1" ] || free_to_all "$node" || return 1 ;;
		esac
	done
}

echo '@plug other KB0002'
keyboard=$(named 'QEMU QEMU USB Keyboard')
"$bin/bandtallyd" --data $data 2>$data.log &
daemon=$!
check 'the station runs' status_says 'room 2, Theatre 2'
new1=$(card 1 'NEW CASE') awake1=$(card 1 'AWAKE PATIENT') new2=$(card 2 'NEW CASE') awake2=$(card 2 'AWAKE PATIENT')
next1=$(card 1 NEXT) next2=$(card 2 NEXT)

echo '@plug scanner SN0001'
check 'a scanner that is plugged in gets its program and its room' status_says 'scanner usb, room 1: running'
node=$(readlink -f /dev/input/by-id/*SN0001-event-kbd)
check 'a keyboard that nobody listed is left alone, whether it was there before or looks the same' other_keyboards_free "$node"
mkfifo /tmp/hid
"$tests/scanner-inject" uhid /tmp/hid &
exec 3>/tmp/hid
check 'a second one of another kind gets the other room' status_says 'scanner hid, room 2: running'
echo "@type $new1"
check 'what the first types is entered in its room' sheet_says 1 '"case":{.*"number":1'
echo "$new2" >&3
check 'what the second types is entered in the other' sheet_says 2 '"case":{.*"number":2'
echo "@type $awake1"
echo "$awake2" >&3
check 'both at the same time: the first room' sheet_says 1 '"awake":true'
check 'and the second' sheet_says 2 '"awake":true'

# Without its udev daemon the machine says nothing more of devices: what the driver is told comes first, and alone.
udevd=$(pgrep -x systemd-udevd | head -n 1)
pkill -STOP -x systemd-udevd
before=$(($(events) - $(faults))) starts=$(started)
echo '@press BTBC1'
echo '@pull scanner'
check 'pulled out in the middle of a code: the status says so' status_says 'scanner usb, room 1: not running: .*lost at [0-9][0-9]:[0-9][0-9]'
check 'the part is said to be thrown away, once' is faults 'usb of Theatre 1: [0-9] keys of a code were thrown away' 1
echo '@plug other2 KB0003'
sleep 4
check 'it is not started again while it is gone' is started x "$starts"
check 'the keyboard that has its place now is left alone' other_keyboards_free none
pkill -CONT -x systemd-udevd
udevadm settle -t 20
sleep 1
check 'udev tells of it later: it was lost once' is faults 'usb of Theatre 1: \(lost\|/dev\)' 1
check 'and nothing of the code was counted' [ $(($(events) - $(faults))) = "$before" ]

echo '@plug scanner SN0001'
check 'plugged in again it runs again' status_says 'scanner usb, room 1: running'
ready usb
echo "@type $next1"
says_next 1
echo "@type $awake1"
check 'and is entered' sheet_says 1 '"awake":false'
node=$(readlink -f /dev/input/by-id/*SN0001-event-kbd)
first=$(driver_of "$node")
kill -KILL "$first"
check 'a program that is killed is told' is faults 'usb of Theatre 1: lost: its program ended' 1
check 'and is started again' new_driver "$node" "$first"
second=$(driver_of "$node")
kill -KILL "$second"
check 'each time' new_driver "$node" "$second"
check 'and works' status_says 'scanner usb, room 1: running: how it sends'

# What the log says of a keyboard that nobody listed is what makes it a scanner.
sed -n '/event.* is left alone/,/^$/p' $data.log | sed -n '/^\[scanner/,/^$/p' >/tmp/section
sed 's/^/section: /' /tmp/section
cat /tmp/section >>$data/scanners.ini
echo '@pull other2'
sleep 1
echo '@plug other2 KB0003'
check 'one that the log has named, once it is listed, is taken when it is plugged in again' status_says 'scanner usb-0627-0001, room 1: running'
echo '@plug twin KB0003'
check 'a second one that the same lines fit has a program of its own' status_says 'scanner usb-0627-0001-2, room 1: running'
check 'and the first keeps its own' status_says 'scanner usb-0627-0001, room 1: running'

# A serial scanner on USB: a gadget of the kernel's own, on a bus of the kernel's own.
g=$(gadget line acm.0 b0c2 SN0003)
plug_gadget "$g"
check 'a serial scanner on USB gets its program and its room' status_says 'scanner line, room 2: running'
stty -F /dev/ttyGS0 raw -echo
ready line
printf '\002]C0%s\003' "$next2" >/dev/ttyGS0
says_next 2
printf '\002]C0%s\003' "$awake2" >/dev/ttyGS0
check 'and is entered' sheet_says 2 '"awake":false'
printf '\002BTBC1' >/dev/ttyGS0
sleep 0.3
unplug_gadget "$g"
check 'pulled out in the middle of a code it is lost' status_says 'scanner line, room 2: not running: lost at'
check 'the part is said to be thrown away' is faults 'line of Theatre 2: .*thrown away' 1
plug_gadget "$g"
check 'plugged in again it runs again' status_says 'scanner line, room 2: running'
ready line
printf '\002]C0%s\003' "$next2" >/dev/ttyGS0
says_next 2
printf '\002]C0%s\003' "$awake2" >/dev/ttyGS0
check 'and works' sheet_says 2 '"awake":true'

# More devices come and go than the station is told of: it sleeps, and the kernel's memory for it runs over.
echo '@pull scanner'
check 'the first scanner is pulled out' status_says 'scanner usb, room 1: not running'
kill -STOP "$daemon"
i=0
while [ $i -lt 12 ]; do
	udevadm trigger --subsystem-match=tty
	i=$((i + 1))
done
udevadm settle -t 20
echo '@plug scanner SN0001'
exec 3>&-
n=0
until [ -e "$(echo /dev/input/by-id/*SN0001-event-kbd)" ] || [ $n -eq 100 ]; do
	sleep 0.1
	n=$((n + 1))
done
udevadm settle -t 20
kill -CONT "$daemon"
check 'messages of udev were lost, and the station knows' log_says 'all devices are looked at again'
check 'what was plugged in meanwhile runs' status_says 'scanner usb, room 1: running'
check 'and what was pulled out is lost' status_says 'scanner hid, room 2: not running: lost at'

# A scanner of which nothing is known, and what the scanner-check sheet teaches.
teach() { # RECORDING: as a person does it, the first code again once the station has asked for it
	ready taught
	echo BTBC60191 >&4
	check 'the first code of the sheet begins the check' sheet_says 3 '"recent":\[{[^}]*Scanner check: scan the sheet once'
	check 'and its scanner is named meanwhile' status_says 'scanner taught, room 3: running: is being checked'
	ready taught
	[ -z "${1:-}" ] || echo "<$work/$1.keys" >&4
}
next3=$(card 3 NEXT) new3=$(card 3 'NEW CASE') cancel3=$(card 3 CANCEL)
bt catalogue import "$here/../../config/catalogue.csv"
mkfifo /tmp/taught
"$tests/scanner-inject" uinput /tmp/taught &
exec 4>/tmp/taught
check 'a scanner that was never taught is named' status_says 'scanner taught, room 3: running: .*separator.*scan the scanner-check sheet'
ready taught
echo "<$work/pack.keys" >&4
check 'a GS1 code of it that could mean two things is not guessed' is faults 'taught of Theatre 3: a code of [0-9]* keys was not sent' 1
echo "$next3" >&4
says_next 3
check 'and it is named all the same' status_says 'scanner taught, room 3: running: .*separator.*scan the scanner-check sheet'
teach nothing
check 'a pass with nothing in it says so' sheet_says 3 'Scanner check not complete: .*nothing was learned'
check 'and leaves no profile' [ -z "$(ls $data/profiles)" ]
teach letters
check 'a pass over its letters alone says what is still unknown' sheet_says 3 'not everything was learned: .*undecided'
check 'and it is still named' status_says 'scanner taught, room 3: running: .*scan the scanner-check sheet'
teach sheet
check 'a whole pass teaches' sheet_says 3 'Scanner check done: this station now knows'
check 'a German layout, the separator as F8' grep -qx 'layout = de' $data/profiles/1209-b0c0-.ini
check 'and it is not named any more' status_says 'scanner taught, room 3: running$'
# A check gives way to the count.
cp $data/profiles/1209-b0c0-.ini /tmp/profile
ready taught
echo BTBD60198 >&4
check 'the first code of another hospital'"'"'s sheet begins none' sheet_says 3 'This code belongs to another site (BD)'
teach
echo "$new3" >&4
check 'a card in the middle of a check is entered' sheet_says 3 '"case":{.*"number":3'
# The scanner's program says so, unless the station, which sees the case, was quicker.
check 'and ends it' sheet_says 3 'Scanner check not complete: .*a card, badge or digit ended the check\|Scanner check ended, because a case was opened'
check 'the scanner goes on' status_says 'scanner taught, room 3: running$'
check 'by what it had been taught' cmp $data/profiles/1209-b0c0-.ini /tmp/profile
ready taught
echo BTBC60191 >&4
check 'with a case open no check begins' sheet_says 3 'Scanner check not begun, because a case is open'
echo "$cancel3" >&4
bt scan --room 3 "$(card 3 YES)"
check 'once it is over' sheet_says 3 '"case":null'
teach
bt scan --room 3 "$new3"
check 'a case that others open ends a check' sheet_says 3 'Scanner check ended, because a case was opened'
check 'and the scanner is there for it' status_says 'scanner taught, room 3: running$'
ready taught
echo "<$work/pack.keys" >&4
check 'the code is read as it was meant: lot and serial number apart, Y and Z' sheet_says 3 '"identity":"[^"]*Yz-7","lot":"AB-12"'
exec 4>&-
check 'it goes' status_says 'scanner taught, room 3: not running: lost at'
"$tests/scanner-inject" uinput /tmp/taught &
exec 4>/tmp/taught
check 'plugged in again it is known' status_says 'scanner taught, room 3: running$'

# Scanners that are listed, and cannot be given to a room. Keyboards that nobody listed are there all the time.
printf '\n[scanner hid-2]\nvendor = 1209\nproduct = b0c1\nroom = 2\n' >>$data/scanners.ini
check 'before, nothing is without a place' is unplaced x 0
"$tests/scanner-inject" uhid /tmp/hid &
exec 3>/tmp/hid
check 'a scanner that two sections fit is named, and why' status_says 'scanner usb-1209-b0c1, room 2: not running: /dev/.*\[scanner hid\] and \[scanner hid-2\] fit it equally well'
check 'nothing else is' is unplaced x 1
check 'on the board of the room that both sections name' room_shows 2 'Scanner usb-1209-b0c1 of Theatre 2: /dev/.* fit it equally well'
check 'and on the desk' desk_shows 'Scanner usb-1209-b0c1 of Theatre 2: /dev/'
check 'and not in the other room' room_does_not_show 1 b0c1
udevadm trigger --subsystem-match=input
udevadm settle -t 20
sleep 1
check 'however often udev tells of it, it is recorded once' is faults 'usb-1209-b0c1: ' 1
exec 3>&-
check 'unplugged, it is no fault any more' is unplaced x 0
check 'nor on the board' room_does_not_show 2 b0c1
"$tests/scanner-inject" uhid /tmp/hid &
exec 3>/tmp/hid
check 'plugged in again it is, and is recorded again' is faults 'usb-1209-b0c1: ' 2
unplug_gadget "$g"
echo 0xb0c4 >"$g/idProduct"
printf '\n[scanner far]\nvendor = 1209\nproduct = b0c4\nroom = 7\nmode = serial\n' >>$data/scanners.ini
plug_gadget "$g"
check 'one of a room that is not there is named' status_says 'scanner far, room 7: not running: /dev/.*which station.ini does not have'
check 'in every room: the first' room_shows 1 'Scanner far: /dev/'
check 'and the second' room_shows 2 'Scanner far: /dev/'
sed -i 's/^\[scanner hid-2\]$/&\nserial = SN0077/' $data/scanners.ini
udevadm trigger --action=add "/sys/class/input/$(basename "$(named 'Example Code Reader H')")"
check 'the first, with its settings put right, runs' status_says 'scanner hid-2, room 2: running'
check 'and is no fault any more' room_does_not_show 2 'equally well'
check 'the other still is' is unplaced x 1

kill "$daemon"
wait "$daemon"
ended=$?
[ $ended = 0 ] || tail -n 60 $data.log | sed 's/^/log: /'
check 'the station ends in order' [ $ended = 0 ]
check 'the record has every fault that was told' is recorded x "$(faults)"
