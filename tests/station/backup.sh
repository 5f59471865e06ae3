#!/bin/sh
# A station that runs is backed up, goes on, is destroyed, restored, started and scanned; and what must not be called a
# backup, or must not be put in the place of a record: a damaged file, a full disk, no right, a station that still works.
#   backup.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
command -v python3 >/dev/null || skip 'python3 is not installed'
umask 0022
expect() { # CODE WORDS COMMAND…: the exit code, and words that the answer must hold
	code=$1 words=$2
	shift 2
	got=0
	"$@" >"$root/out" 2>&1 || got=$?
	[ "$got" = "$code" ] || fail "exit $got instead of $code: $*: $(cat "$root/out")"
	grep -q -- "$words" "$root/out" || fail "no '$words' in: $(cat "$root/out")"
	echo "ok $words"
}
card() { bt label cards --list | awk -F '\t' -v w="$1" '$3 == w { print $1 }'; }
events() { bt status --json | sed -n 's/.*"events":\([0-9]*\),"faults".*/\1/p'; }
mode() { stat -c %a "$1"; }
sum() { sha256sum <"$1"; }
places=$root/backups
mkdir "$places"
one=$places/one.db

# --- it runs, is backed up, and goes on
start
for file in record.db record.db-wal lock; do
	[ "$(mode "$data/$file")" = 640 ] || fail "$file has mode $(mode "$data/$file")"
done
[ "$(mode "$data/station.key")" = 600 ] || fail "the key has mode $(mode "$data/station.key")"
bt catalogue import "$source/tests/replay/catalogue.csv" >/dev/null
bt staff add --registered practitioner SCRUB-1 >/dev/null
new=$(card 'NEW CASE') cancel=$(card CANCEL) yes=$(card YES)
bt scan "$new" >/dev/null
bt status | grep -q 'no backup was ever checked' || fail 'a backup is spoken of that nobody made'
before=$(events)
expect 0 "whole: $before events" bt backup "$one"
[ "$(mode "$one")" = 640 ] || fail "the backup has mode $(mode "$one")"
[ "$(ls "$places")" = one.db ] || fail "beside the backup lies: $(ls "$places")"
[ -z "$(ls "$data/copies")" ] || fail 'the copy for it stays in the data folder'
expect 0 "0 min ago .*with $before of $((before + 1)) events" bt status
bt scan "$cancel" >/dev/null || true
bt scan "$yes" >/dev/null
expect 0 'last case 1' bt status

# --- what is no place for a backup, and what is no backup
expect 1 'is in the data folder' bt backup "$data/record.db"
expect 1 'is in the data folder' bt backup "$data/other.db"
echo 'somebody wrote this' >"$places/letter"
expect 1 'is there, and is no backup' bt backup "$places/letter"
[ "$(cat "$places/letter")" = 'somebody wrote this' ] || fail 'the letter is gone'
ln -s "$one" "$places/link.db"
expect 1 'is there, and is no backup' bt backup "$places/link.db"
expect 1 'make the folder' bt backup "$root/nowhere/one.db"
expect 1 'is in the data folder' bt backup "$data/slips/one.db"
expect 2 'FILE is missing' bt backup
expect 1 'a station works in' bt restore "$one"
expect 0 "whole: $before events" bt restore --check "$one"
expect 1 'no-such.db: No such file' bt restore --check "$places/no-such.db"
expect 1 'letter' bt restore "$places/letter"

# --- a full disk, and one that is too full to be copied from
if mkdir "$root/small" && mount -t tmpfs -o size=24k none "$root/small" 2>/dev/null; then
	at_end() { umount "$root/small" 2>/dev/null || true; }
	expect 1 'the disk is full' bt backup "$root/small/one.db"
	[ -z "$(ls "$root/small")" ] || fail "on the full disk stays: $(ls "$root/small")"
	mount -o remount,size=4m "$root/small"
	expect 0 'is whole' bt backup "$root/small/one.db"
	was=$(sum "$root/small/one.db")
	mount -o remount,size=$(($(stat -c %s "$root/small/one.db") + 20000)) "$root/small"
	expect 1 'the disk is full' bt backup "$root/small/one.db"
	[ "$(sum "$root/small/one.db")" = "$was" ] || fail 'a backup that failed took the earlier one along'
	stop
	mount -o remount,size=8m "$root/small"
	cp -r "$data" "$root/small/data"
	kept=$data
	data=$root/small/data
	start
	expect 0 'is whole' bt backup "$places/of-small.db"
	head -c "$(($(df --output=avail -B 1 "$root/small" | tail -n 1) - 3000000))" /dev/zero >"$root/small/full"
	expect 1 'must leave 4096 for the count' bt backup "$places/of-small.db"
	stop
	data=$kept
	umount "$root/small"
	start
else
	echo 'skipped: a full disk, because no tmpfs can be mounted here'
fi

# --- who may: root and the station's user; another user may not even look
if [ "$(id -u)" -eq 0 ] && command -v setpriv >/dev/null; then
	chmod 755 "$root"
	chmod 777 "$places"
	nobody() { setpriv --reuid 65534 --regid 65534 --clear-groups "$bin/bandtally" --data "$data" "$@"; }
	nobody --version >/dev/null || skip 'another user cannot reach the programs'
	expect 1 'not allowed: your user is not in the group' nobody backup "$places/nobody.db"
	[ ! -e "$places/nobody.db" ] || fail 'nobody has a backup'
	expect 1 'one.db: Permission denied' nobody restore --check "$one"
	cp "$one" "$places/open.db"
	chmod 644 "$places/open.db"
	expect 1 'as the owner of the folder, or as root' nobody restore "$places/open.db"
else
	echo 'skipped: another user can be taken on by root only'
fi

# --- destroyed while it runs, restored, started, scanned
later=
if command -v pdftotext >/dev/null; then # a paper that is made after the backup
	bt scan --text 'case 1: the label was on the wrong sheet' >/dev/null
	paper=$data/slips/slip-0000001-copy-1.pdf
	soon 'a slip is printed after the backup' '[ -s "$paper" ]'
	later=$(pdftotext "$paper" - | grep -o 'BTBC4[0-9]\{19\}' | head -n 1)
	[ -n "$later" ] || fail 'no code stands on the slip'
fi
now=$(events)
kill -KILL "$daemon"
wait "$daemon" 2>/dev/null || true
daemon=
python3 - "$data/record.db" <<'PY'
import sys
with open(sys.argv[1], 'r+b') as f:
	f.seek(4096)
	f.write(b'\xa5' * 20000)
PY
cp "$data/record.db" "$root/wreck"
[ -s "$data/record.db-wal" ] || fail 'the station that was killed left no log'
cp "$data/record.db-wal" "$root/wreck-wal"

# A backup that was damaged since: each byte counts, and nothing is touched for its sake.
cp "$one" "$root/torn.db"
python3 - "$root/torn.db" <<'PY'
import sys
with open(sys.argv[1], 'r+b') as f:
	text = f.read()
	at = text.rindex(b'SCRUB-1')
	f.seek(at + 6)
	f.write(b'2')
PY
listing() { find "$data" -type f -exec sha256sum {} + | sort; }
listing >"$root/listing"
expect 1 'its hash does not follow' bt restore "$root/torn.db"
for size in 100 5000 20480 $(($(stat -c %s "$one") - 1)); do
	head -c "$size" "$one" >"$root/short.db"
	expect 1 'short.db' bt restore "$root/short.db"
done
cp "$one" "$root/blind.db" # each event is there, and what they are looked up by says that there are none
python3 - "$root/blind.db" <<'PY'
import sqlite3, sys
root, size = sqlite3.connect(sys.argv[1]).execute(
	"SELECT rootpage, page_size FROM sqlite_schema, pragma_page_size WHERE name = 'event_station'").fetchone()
with open(sys.argv[1], 'r+b') as f:
	f.seek((root - 1) * size + 3)
	f.write(b'\0\0')
PY
expect 1 'blind.db: the file is damaged or cut short' bt restore "$root/blind.db"
: >"$root/empty.db"
expect 1 'empty.db' bt restore "$root/empty.db"
expect 1 'its hash does not follow' bt restore --check "$root/torn.db"
expect 0 "whole: $before events" bt restore --check "$one"
listing | cmp -s - "$root/listing" || fail 'a backup that is not restored changed the data folder'
echo 'ok what is not restored touches nothing'

chown 65534:65534 "$data" 2>/dev/null || true
expect 0 'it is the record of this data folder now' bt restore "$one"
grep -q 'go through the slips and the paper' "$root/out" || fail 'nobody says what is missing'
aside=$(sed -n 's/^what was there lies, unchanged, in //p' "$root/out")
cmp "$aside" "$root/wreck" || fail 'what was there is not as it was'
cmp "$aside-wal" "$root/wreck-wal" || fail 'the log of what was there is not as it was'
[ ! -e "$data/record.db-wal" ] || fail 'the old log would be applied to the new record'
[ "$(mode "$data/record.db")" = 640 ] || fail "the record has mode $(mode "$data/record.db")"
[ "$(stat -c %u "$data/record.db")" = "$(stat -c %u "$data")" ] || fail 'the record belongs to another than the folder'
[ -z "$(find "$data" -name '*.new*')" ] || fail 'a file of the restore stays'
bt audit verify --file "$data/record.db" | grep -q "^$before events" || fail 'another record was restored'
sleep 1 # its name is the second in which it was kept
mv "$data/station.key" "$root/station.key"
expect 0 'station.key is not there: put the copy' bt restore "$one"
mv "$root/station.key" "$data"
chown "$(id -u):$(id -g)" "$data" "$data"/*
start
expect 0 'last case' bt status
expect 0 'case 1' bt sheet
bt scan "$cancel" >/dev/null || true
bt scan "$yes" >/dev/null || fail 'the restored station takes no scan'
bt audit verify | grep -q 'without a gap' || fail 'the restored record does not hold'
if [ -n "$later" ]; then
	expect 3 'is of this station and \(newer than this record\|was made before an older record\)' bt scan "$later"
	expect 0 'DO NOT TRUST THE STATION NOW: .*older' bt status
	digit=$(printf %s "$later" | cut -c 21)
	expect 3 'check digits' bt scan "$(printf %s "$later" | cut -c 1-20)$(((digit + 1) % 10))$(printf %s "$later" | cut -c 22-24)"
fi
[ "$now" -gt "$before" ] || fail 'nothing happened after the backup'

# --- of a station that is down
stop
expect 0 'the station does not run' bt backup "$places/down.db"
expect 0 'is whole' bt restore --check "$places/down.db"
