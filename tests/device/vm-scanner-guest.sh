#!/bin/sh
# Runs inside the emulated machine (vm-scanner): scanners of five kinds come and go. Lines that begin with "@" are
# the result, and what the host waits for.
work=$1 bin=$2 tests=$3 here=$4
. "$here/vm-guest.sh"
start_devices vm-scanner-guest \
	'SUBSYSTEM=="input", KERNEL=="event*", ENV{ID_VENDOR_ID}=="0627", ENV{ID_BANDTALLY_SCANNER}="1", ENV{ID_BANDTALLY_ROOM}="7"'

tagged() { # the node that udev marked as a scanner
	n=0
	while [ $n -lt 100 ]; do
		for e in /dev/input/event*; do
			[ -e "$e" ] && udevadm info -q property "$e" 2>/dev/null | grep -qx 'ID_BANDTALLY_SCANNER=1' && echo "$e" && return
		done
		sleep 0.2
		n=$((n + 1))
	done
}
drive() { # WORD COMMAND…: runs a driver and gives its lines that word; its process id in $driver
	word=$1
	shift
	: >"/tmp/$word"
	(sh -c 'echo $$ >"$1"; shift; exec "$@"' sh "/tmp/$word.pid" "$@" </dev/null >>"/tmp/$word" 2>>"/tmp/$word.errors"; echo "exit $?" >>"/tmp/$word") 3>&- &
	tail -n +1 -f "/tmp/$word" 2>/dev/null 3>&- | sed -u "s/^/@$word /" 3>&- &
	n=0
	while ! grep -q hello "/tmp/$word" && [ $n -lt 100 ]; do
		sleep 0.1
		n=$((n + 1))
	done
	read -r driver <"/tmp/$word.pid"
	sleep 0.5
}
until_line() { # WORD PATTERN SECONDS
	n=0
	while ! grep -q "$2" "/tmp/$1" && [ $n -lt $(($3 * 5)) ]; do
		sleep 0.2
		n=$((n + 1))
	done
}

echo '@plug'
node=$(tagged)
echo "@node $node"
udevadm info -q property "$node" | sed -n 's/^\(ID_VENDOR_ID\|ID_MODEL_ID\|ID_SERIAL_SHORT\|ID_INPUT_KEY\|ID_BANDTALLY_ROOM\|ID_PATH\)=/@property &/p'
drive kbd "$bin/scan-handheld" --device "$node" --layout us
echo "@sandbox $(sed -n 's/^Seccomp:\t//p' "/proc/$driver/status")"
"$bin/scan-handheld" --device "$node" --layout us </dev/null 2>&1 | sed 's/^/@busy /'
(timeout 4 cat "$node" | wc -c | sed 's/^/@grabbed /') &
echo '@type'
until_line kbd '"lost"' 90
until_line kbd exit 10
echo '@plug again'
node=$(tagged)
(timeout 4 cat "$node" | wc -c | sed 's/^/@free /') &
sleep 0.3
echo '@type again'
sleep 4

mkfifo /tmp/keys
"$tests/scanner-inject" uinput /tmp/keys &
exec 3>/tmp/keys
drive uinput "$bin/scan-handheld" --device "$(named 'Example Code Reader U')" --layout us
i=0
while [ $i -lt 100 ]; do
	echo "950600000$((1000 + i))"
	i=$((i + 1))
done >/tmp/codes
cat /tmp/codes >&3
until_line uinput 9506000001099 30
echo "@right $(sed -n 's/.*"data":"\([^"]*\)".*/\1/p' /tmp/uinput | cmp - /tmp/codes && echo 100)"
kill -STOP "$driver"
printf '!%0400d\n' 0 >&3
sleep 1
kill -CONT "$driver"
sleep 1
echo 7777 >&3
until_line uinput 7777 10
exec 3>&-
until_line uinput exit 10

"$tests/scanner-inject" uhid /tmp/keys &
exec 3>/tmp/keys
drive uhid "$bin/scan-handheld" --device "$(named 'Example Code Reader H')"
echo BTBC10104051 >&3
until_line uhid BTBC 10
exec 3>&-
until_line uhid exit 10

g=$(gadget G hid.0 b0c3 SN4711)
echo 1 >"$g/functions/hid.0/protocol"
echo 1 >"$g/functions/hid.0/subclass"
echo 8 >"$g/functions/hid.0/report_length"
"$tests/scanner-inject" descriptor >"$g/functions/hid.0/report_desc"
plug_gadget "$g"
node=$(named 'Example Code Reader G')
udevadm settle -t 10
echo "@gadget-is $(udevadm info -q property "$node" | grep '^ID_\(BUS\|VENDOR_ID\|MODEL_ID\|SERIAL_SHORT\|USB_DRIVER\)=' | sort | paste -sd ' ' -)"
drive gadget "$bin/scan-handheld" --device "$node" --layout us
echo ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789950600013435210795060007 | "$tests/scanner-inject" gadget /proc/self/fd/0
printf BTBC1 | "$tests/scanner-inject" gadget /proc/self/fd/0
sleep 0.2
unplug_gadget "$g"
until_line gadget exit 10

drive serial "$bin/scan-serial" --device /dev/ttyS1 --baud 115200
echo '@send'
until_line serial AFTER 20
sed 's/^/@error /' /tmp/*.errors
sleep 0.3
