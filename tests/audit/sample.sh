#!/bin/sh
# Samples both ways, the same each time.
#   sample.sh BUILD-FOLDER
set -eu
build=$1
. "$(dirname "$0")/common"
asked() { sqlite3 "$root/data/record.db" "$1"; }
cells() { grep ",cell,sample row" "$root/out" | grep ",$1," | cut -d , -f 5; }
says 'a sample of slips is drawn' 'sample,cell,sample row 30,Slip,' bt audit sample 30 --seed 5 --csv
cells Slip >"$root/drawn"
[ "$(sort -u "$root/drawn" | wc -l)" = 30 ] || fail 'one was drawn twice'
for row in 1 12 30; do
	slip=$(sed -n "${row}p" "$root/drawn" | sed 's/^0*//')
	day=$(cells Date | sed -n "${row}p")
	is=$(asked "SELECT date(json_extract(payload, '\$.wall_ms') / 1000 + 60 * coalesce(json_extract(payload, '\$.utc'), 0), 'unixepoch') FROM event WHERE key = 'slip:$slip' ORDER BY seq LIMIT 1")
	[ "$day" = "$is" ] || fail "slip $slip is of $is and not $day"
done
ok 'each once, with its day'
bt audit sample 30 --seed 5 --csv >"$root/again"
cmp -s "$root/again" "$root/out" || fail 'the same seed drew others'
ok 'the same seed draws the same'
bt audit sample 30 --seed 6 --csv >"$root/again"
! cmp -s "$root/again" "$root/out" || fail 'another seed drew the same'
ok 'another seed draws others'
says 'the sheet says what it would still allow' '30 of 30 right still allows up to 9.5 % wrong' bt audit sample 30 --seed 5 --json
says 'it comes on paper' '' bt audit sample 30 --seed 5 --pdf "$root/sheet.pdf"
pdftotext -layout "$root/sheet.pdf" "$root/text"
[ "$(grep -c '\[ *\]' "$root/text")" = 30 ] || fail 'there are not 30 boxes to tick'
refuses 'more than there are' 1 'draw fewer' bt audit sample 400 --seed 5 --csv
refuses 'without a seed nobody could draw it again' 2 'seed' bt audit sample 30 --csv

day=$(asked "SELECT date(json_extract(payload, '\$.wall_ms') / 1000, 'unixepoch') FROM event WHERE kind = 'case-opened' ORDER BY seq LIMIT 1")
printf 'date,room,slot,digit\n%s,1,1,yes\n%s,1,2,no\n%s,2,1,yes\n1999-01-01,1,1,yes\n' "$day" "$day" "$day" >"$root/list.csv"
says 'planned operations are drawn from a list' 'sample,cell,sample row 3,Slot,1' bt audit sample 3 --seed 1 --csv --list "$root/list.csv"
cells 'Cases recorded that day' | grep -qx 0 || fail 'a day without a case is not told'
cells 'Cases recorded that day' | grep -qvx 0 || fail 'a day with cases is not told'
refuses 'those that are not of a digit are not drawn' 1 'draw fewer' bt audit sample 4 --seed 1 --csv --list "$root/list.csv"
refuses 'where no list was kept, none is drawn from' 1 'no theatre list is kept' bt audit sample 2 --seed 1 --csv --planned
bt audit report --year "${day%%-*}" --json --list "$root/list.csv" >/dev/null 2>&1 || fail 'no report keeps the list'
bt audit sample 3 --seed 1 --csv --list "$root/list.csv" >"$root/given"
says 'what a report kept is drawn from without being given again' 'sample,cell,sample row 3,Slot,1' bt audit sample 3 --seed 1 --csv --planned
cmp -s "$root/out" "$root/given" || fail 'others are drawn than of the list itself'
ok 'the same of it as of the list itself'
