#!/bin/sh
# Bad input gets one clear sentence (what, why, what to do) and a documented exit code, and nothing is lost.
#   bad-input.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
at_end() { ! mountpoint -q "$root/small" 2>/dev/null || umount "$root/small"; }
# expect CODE WORDS COMMAND…: the exit code, and words that the answer must hold
expect() {
	code=$1 words=$2
	shift 2
	got=0
	"$@" >"$root/out" 2>&1 || got=$?
	[ "$got" = "$code" ] || fail "exit $got instead of $code: $*: $(cat "$root/out")"
	grep -q -- "$words" "$root/out" || fail "no '$words' in: $(cat "$root/out")"
	echo "ok $words"
}

expect 1 'it is not running: start it with' bt status
start
expect 1 'another bandtallyd works in' "$bin/bandtallyd" --data "$data"
bt catalogue import "$source/tests/replay/catalogue.csv" >/dev/null
expect 2 'usage: bandtally label' bt label pack --line GREEN-M --count 1
# What is exported can be imported again, and is then the same.
bt catalogue export >"$root/export.csv"
[ "$(wc -l <"$root/export.csv")" = "$(grep -c . "$source/tests/replay/catalogue.csv")" ] || fail 'lines are missing in the export'
expect 0 'lines' bt catalogue import "$root/export.csv"
bt catalogue export | cmp - "$root/export.csv" || fail 'the export is another after its import'
new=$(bt label cards --list | awk -F '\t' '$3 == "NEW CASE" { print $1 }')
expect 3 'belongs to another site (CD)' bt scan BTCD10100138
expect 3 'check digit' bt scan '(01)09506000134353'
expect 3 'Misread, nothing entered' bt scan "$(printf '%s' "$new" | sed 's/.$//')"
expect 3 'Misread, nothing entered' bt scan '(01)0950600013'
expect 3 'No case is open' bt scan '(01)09506000134352(17)280331(10)T26(21)S101'
expect 0 'Case 1 opened' bt scan "$new"
expect 3 'Not in the catalogue' bt scan '(01)09506000199993'
expect 3 "a patient's code: nothing of it was kept" bt scan '(8018)123456789012345675'
expect 1 'longer than' bt scan "$(head -c 9000 /dev/zero | tr '\0' A)"
expect 3 'Misread, nothing entered\|Not in the catalogue' bt scan "$(head -c 5000 /dev/zero | tr '\0' A)"
expect 3 'is not in station.ini' bt scan --room 77 "$new"
expect 4 'Is a tourniquet on it now' bt scan "$(bt label digits --list | awk -F '\t' '$3 == "right index finger" { print $1 }')"
expect 2 'no such option' bt scan --nonsense x
expect 2 'is no command' bt nonsense
expect 1 'cannot read' bt catalogue check "$root/absent.csv"
printf 'key,name,role\nX,plain band,tourniquet\n' >"$root/bad.csv"
expect 1 'line 2 (marked): .*regulator' bt catalogue import "$root/bad.csv"
expect 1 'there is no case 99' bt case show 99
expect 1 "line 'NOTHING' is not in the catalogue" bt label pack --line NOTHING --count 1 --pdf "$root/x.pdf"
expect 1 'is not waiting to be seen' bt print retry 12
mkdir "$root/folder.png"
printf 'nothing' >"$root/text.png"
expect 1 'text.png' "$bin/scan-camera" --image "$root/text.png"
expect 1 'folder.png' "$bin/scan-camera" --image "$root/folder.png"
stop

# A tourniquet was on when the station was killed: its time goes on from the same moment.
start
digit=$(bt label digits --list | awk -F '\t' '$3 == "right index finger" { print $1 }')
yes=$(bt label cards --list | awk -F '\t' '$3 == "YES" { print $1 }')
bt scan "$yes" >/dev/null
sleep 1.2
kill -9 "$daemon"
wait "$daemon" 2>/dev/null || true
start
ms=$(bt sheet --json | sed -n 's/.*"stretch_ms":\([0-9]*\).*/\1/p')
[ "$ms" -ge 1200 ] && [ "$ms" -le 60000 ] || fail "the digit's time was not kept: $ms ms"
echo "ok the digit's time is kept through a kill: $ms ms"
expect 4 'Tourniquet on the right index finger' bt scan "$digit"
expect 0 'each hash follows' bt audit verify
stop

cp "$data/record.db" "$root/copy.db"
printf 'damage' | dd of="$data/record.db" bs=1 seek=0 conv=notrunc 2>/dev/null
expect 1 'the record is damaged' "$bin/bandtallyd" --data "$data" --check
cp "$root/copy.db" "$data/record.db"
expect 0 'settings and record are sound' "$bin/bandtallyd" --data "$data" --check
expect 0 'language de: not yet read by a practitioner$' "$bin/bandtallyd" --data "$data" --check
printf '[reminders]\nfirst_reminder_min = soon\n' >"$data/policy.ini"
expect 1 "policy.ini line 2: first_reminder_min is 'soon': it must be a whole number" "$bin/bandtallyd" --data "$data" --check
rm "$data/policy.ini"
printf '[site]\nletters = AZ\n' >"$data/station.ini"
expect 1 'station.ini line 2: letters' "$bin/bandtallyd" --data "$data" --check
rm "$data/station.ini"
touch "$root/file"
expect 1 'is not a folder' "$bin/bandtallyd" --data "$root/file"
if [ "$(id -u)" -eq 0 ]; then
	mkdir "$root/locked"
	chmod 0555 "$root/locked"
	chmod 0755 "$root"
	expect 1 'cannot write in the data folder' setpriv --reuid 65534 --regid 65534 --clear-groups "$bin/bandtallyd" \
		--data "$root/locked"
	# A full disk: what cannot be stored is not entered, and the station says: by hand.
	mkdir "$root/small"
	if mount -t tmpfs -o size=400k none "$root/small" 2>/dev/null; then
		data=$root/small
		start
		awake=$(bt label cards --list | awk -F '\t' '$3 == "AWAKE PATIENT" { print $1 }')
		next=$(bt label cards --list | awk -F '\t' '$3 == "NEXT" { print $1 }')
		bt scan "$new" >/dev/null
		full='' n=0
		while [ $n -lt 3000 ]; do
			n=$((n + 1))
			if ! bt scan "$awake" >"$root/out" 2>&1 || ! bt scan "$next" >"$root/out" 2>&1; then
				full=yes
				break
			fi
		done
		[ -n "$full" ] || fail 'the small disk was never full'
		grep -q 'NOT ENTERED' "$root/out" && grep -q 'by hand' "$root/out" || fail "on a full disk: $(cat "$root/out")"
		echo "ok a full disk is said, after $n scans: NOT ENTERED, count by hand"
		bt sheet | grep -q 'DO NOT TRUST' || fail 'the sheet does not say that the station cannot be trusted'
		mount -o remount,size=4m "$root/small"
		bt scan "$next" >/dev/null || fail 'the station does not go on after there is space again'
		echo 'ok it goes on once there is space'
		stop
		bt audit verify | grep -q 'without a gap' || fail 'the record does not hold after a full disk'
		echo 'ok the record holds'
		dd if=/dev/zero of="$data/filling" bs=4k 2>/dev/null || true
		expect 1 'the disk of .* is full' "$bin/bandtallyd" --data "$data" --check
		rm "$data/filling"
		expect 0 'settings and record are sound' "$bin/bandtallyd" --data "$data" --check
	else
		echo 'skipped: a full disk, because no tmpfs can be mounted here'
	fi
else
	echo 'skipped: a read-only and a full folder, which need root here'
fi
