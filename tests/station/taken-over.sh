#!/bin/sh
# Each program of the station, taken over at work: it starts no process and no program, asks the station for nothing, and has
# of the data folder nothing but what it writes. All of it is tried outside first, where it can be done.
#   TAKEN_OVER=LIBRARY taken-over.sh FOLDER-OF-PROGRAMS
set -eu
real=$1
bin=
. "$(dirname "$0")/common"
bin=$root/bin
mkdir "$bin" "$root/reports"
cp "$real/bandtallyd" "$real/bandtally" "$bin"
echo secret >"$root/other"
for program in bandtally-print bandtally-board bandtally-forward scan-handheld scan-serial scan-camera; do
	cat >"$bin/$program" <<X
#!/bin/sh
export REPORT=$root/reports/$program DATA=$data SLIP=$data/slips/slip-0000041-copy-1.pdf OTHER=$root/other
export LD_PRELOAD=$TAKEN_OVER ASAN_OPTIONS=\${ASAN_OPTIONS:+\$ASAN_OPTIONS:}verify_asan_link_order=0
exec $real/$program "\$@"
X
	chmod +x "$bin/$program"
done
mkdir -p "$data/slips/.unfinished"
echo paper >"$data/slips/slip-0000041-copy-1.pdf"
# A scanner's keys, a serial line, a picture.
printf '# no keys\n' >"$root/keys"
printf 'P5 1 1 255\nx' >"$root/picture.pgm"
cat >"$root/line.py" <<X
import os, sys, time
_, line = os.openpty()
os.symlink(os.ttyname(line), "$root/line")
time.sleep(600)
X
/usr/bin/python3 "$root/line.py" &
line=$!
at_end() { kill "$line" 2>/dev/null || true; }
soon 'there is a serial line' '[ -e "$root/line" ]'
cat >"$data/station.ini" <<X
[site]
letters = BC
[room 1]
name = Theatre 1
[board]
start = yes
port = 0
[hospital]
start = yes
hosts = localhost:1
certificate = hospital.pem
key = hospital.key
authority = hospital-ca.pem
[driver hand]
command = $bin/scan-handheld --events $root/keys
room = 1
[driver serial]
command = $bin/scan-serial --device $root/line
room = 1
[driver camera]
command = $bin/scan-camera --image $root/picture.pgm
room = 1
X
start
report() { # PROGRAM WHAT: what came of it
	sed -n "s/^$2 //p" "$root/reports/$1" | head -n 1
}
is() { # PROGRAM WHAT... ANSWER
	program=$1 answer=
	shift
	for what in "$@"; do answer=$what; done
	for what in "$@"; do
		[ "$what" = "$answer" ] || [ "$(report "$program" "$what")" = "$answer" ] ||
			fail "$program: $what: $(report "$program" "$what")"
	done
}
over() { grep -q '^end done' "$root/reports/$1"; }

# A paper of its own: the forwarder tries the other at the same time.
echo paper >"$data/slips/slip-0000040-copy-1.pdf"
DATA=$data SLIP=$data/slips/slip-0000040-copy-1.pdf OTHER=$root/other REPORT=$root/reports/outside \
	LD_PRELOAD=$TAKEN_OVER /usr/bin/python3 -c 'import os; os.write(1, b"")'
over outside || fail 'nothing was tried outside'
is outside signal signal-thread limit trace memory type fork vfork clone clone3 exec execveat thread socket \
	key settings other record folder make overwrite second-name put-aside unlink 'done'
echo 'ok outside all of it can be done'
rm -f "$data/made" "$data/slips/.unfinished"/*

for program in scan-handheld scan-serial scan-camera bandtally-board; do
	soon "$program was taken over" "over $program"
	is "$program" signal signal-thread limit trace type fork vfork clone clone3 exec execveat thread socket EPERM
	is "$program" memory key settings other record folder make overwrite second-name put-aside unlink EPERM
done

soon 'bandtally-forward was taken over' 'over bandtally-forward'
is bandtally-forward signal signal-thread limit trace type fork vfork clone exec execveat second-name EPERM
is bandtally-forward clone3 ENOSYS
is bandtally-forward thread 'done'
is bandtally-forward socket refused
if ! grep -q 'has no Landlock' "$root/log"; then
	is bandtally-forward memory key settings other record folder make overwrite put-aside unlink EACCES
fi

bt catalogue import "$source/config/catalogue.csv" >/dev/null
bt staff add --registered practitioner SCRUB-1 >/dev/null # beside the one that was added outside
bt staff add --registered practitioner CIRC-2 >/dev/null
card() { bt label cards --list | awk -F '\t' -v m="$1" '$3 == m { print $1 }'; }
badge() { bt label badges --list | awk -F '\t' -v m="$1" '$3 == m { print $1 }'; }
for scan in "$(card 'NEW CASE')" "$(badge SCRUB-1)" "$(badge CIRC-2)" \
	'(01)09506000134352(17)330331(10)T26(21)S1' "$(badge CIRC-2)" "$(card 'FINAL COUNT')" "$(card NO)"; do
	bt scan "$scan" >>"$root/log" || [ $? = 4 ] || fail "refused: $scan"
done
soon 'bandtally-print was taken over' 'over bandtally-print'
is bandtally-print signal signal-thread limit trace type fork vfork clone exec execveat second-name EPERM
is bandtally-print clone3 ENOSYS
is bandtally-print thread 'done'
is bandtally-print socket refused
if grep -q 'has no Landlock' "$root/log"; then
	echo 'skipped: this kernel has no Landlock, which keeps files'
else
	is bandtally-print memory key settings other record folder make overwrite put-aside unlink EACCES
	[ "$(cat "$data/slips/slip-0000041-copy-1.pdf")" = paper ] || fail 'another slip was changed'
fi
[ "$(bt staff list | grep -c GHOST)" = 1 ] || fail 'a badge was added, besides the one from outside'
soon 'its slip is printed all the same' '[ -s "$data/slips/slip-0000001-copy-1.pdf" ]'
