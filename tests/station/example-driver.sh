#!/bin/sh
# The driver that DEVELOPERS.md gives as an example, taken out of it and run by the station as it stands there.
#   example-driver.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
guide=$source/DEVELOPERS.md
[ -x /usr/bin/python3 ] || skip '/usr/bin/python3 is absent (package python3)'
at_end() { exec 9>&-; }
example() { sed -n '/^## To add a driver/,/^## To add a paper/p' "$guide" | sed -n "/^    $1/,/^\$/s/^    //p"; }
example '#!' >"$root/my-driver"
chmod +x "$root/my-driver"
mkfifo "$root/mine"
{
	printf '[site]\nletters = BC\n[room 1]\nname = Theatre 1\n[board]\nstart = no\n'
	example '\[driver' | sed "s|^command = .*|command = $root/my-driver $root/mine|"
} >"$data/station.ini"
printf '[scans]\nburst_ms = 0\n' >"$data/policy.ini"
exec 9<>"$root/mine"
start
soon 'the example runs as a scanner of room 1' "bt status | grep -qx 'scanner mine, room 1: running'"
bt label cards --list | awk -F '\t' '$3 == "NEW CASE" { printf "%s\r\n", $1 }' >&9
soon 'a code of it is entered' 'bt sheet | grep -q "case 1"'
printf '10AB\377\n' >&9
soon 'bytes that are no text do not disturb it' 'bt sheet --json | grep -q "\"verdict\":\"refused\""'
bt label cards --list | awk -F '\t' '$3 == "AWAKE PATIENT" { printf "%s\n", $1 }' >&9
soon 'and the next code is whole' 'bt sheet --json | grep -q "\"awake\":true"'
printf 'BTBC1' >&9
sleep 0.2
exec 9>&- # the device has gone
soon 'half a code is told and not entered' 'grep -q "scanner mine of Theatre 1: a code without its end" "$root/log"'
soon 'and it is lost' 'bt status | grep -q "scanner mine, room 1: not running: the device has gone"'
exec 9<>"$root/mine"
soon 'and is started again' "bt status | grep -qx 'scanner mine, room 1: running'"
