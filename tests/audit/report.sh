#!/bin/sh
# What `bandtally audit report` says of a record, in each form, and when it says nothing.
#   report.sh BUILD-FOLDER
set -eu
build=$1
. "$(dirname "$0")/common"
asked() { sqlite3 "$root/data/record.db" "$1"; }
days=$(asked "SELECT DISTINCT date(json_extract(payload, '\$.wall_ms') / 1000, 'unixepoch') FROM event WHERE kind = 'case-opened' ORDER BY 1")
first=$(echo "$days" | head -1) last=$(echo "$days" | tail -1)
report() { bt audit report --from "$first" --to "$last" "$@"; }

says 'a report makes its summary first' 'as they were' report --json
cp "$root/out" "$root/first.json"
told=$(sed -n 's/^summary: .*, \([0-9]*\) events told.*/\1/p' "$root/err")
whole=$told
says 'and the next one has it' 'report:' report --json
told=$(sed -n 's/^summary: .*, \([0-9]*\) events told.*/\1/p' "$root/err")
[ "$told" -lt "$whole" ] || fail "the second report told $told events"
cut -c 1-100000 "$root/out" | sed 's/"time":"[^"]*"//' >"$root/a"
sed 's/"time":"[^"]*"//' "$root/first.json" >"$root/b"
cmp -s "$root/a" "$root/b" || fail 'the second report says something else'
ok 'both say the same'
value() { sqlite3 :memory: "SELECT json_extract(f.value, '\$.$2') FROM json_each(readfile('$root/first.json'), '\$.sections') s, json_each(s.value, '\$.figures') f WHERE json_extract(f.value, '\$.name') = '$1'"; }
all=$(value cases x)
listed=$(asked "SELECT count(*) FROM event WHERE kind = 'case-opened'")
[ "$all" = "$listed" ] || fail "the report has $all cases, the list $listed"
ok 'it has every case of the record'
[ "$(($(value reconciled x) + $(value unresolved x) + $(value cancelled x) + $(value open x)))" = "$all" ] || fail 'the ends do not add up'
ok 'the ends add up'

says 'as CSV it has the same cases' "cases,figure,cases,Recorded,$all,,," report --csv
refuses 'a room that nobody knows has no report' 1 'this record has no room 77' report --room 77 --json
says 'in German its words are German, and its names are what they were' '"label":"Aufgezeichnet","name":"cases"' report --language de --json
refuses 'a language that is not there' 1 'is not installed' report --language fr --json
refuses 'no days are wrong usage' 2 'days' bt audit report --json
refuses 'a month that is none' 2 'days' bt audit report --month 2026-13 --json
refuses 'a quarter that is none' 2 'days' bt audit report --quarter 2026-5 --json
refuses 'days the wrong way round' 2 'days' bt audit report --from 2026-02-02 --to 2026-02-01 --json
refuses 'two forms at once' 2 'one of --json' report --json --csv

printf 'date,room,slot,digit\n%s,1,1,yes\n%s,1,2,yes\n' "$first" "$first" >"$root/list.csv"
says 'a theatre list is set beside it' '"name":"coverage"' report --json --list "$root/list.csv"
grep -q '"heads":\["Month","Planned"' "$root/out" || fail 'coverage has no table'
table() { grep -o '"heads":\["Month","Planned".*' "$root/out" | sed 's/"time":.*//'; }
table >"$root/coverage"
says 'it was kept: the next report has it without being asked for it' 'kept in' report --json
table | cmp -s - "$root/coverage" || fail 'the next report says something else of the list'
says 'the report says from when to when the list is' "was given last: 2, from $first to $first" report --json
says 'as it has none where none is wanted' 'summary:' report --json --list none
! grep -q '"heads":\["Month","Planned"' "$root/out" || fail 'there is coverage without a list'
kept=$(ls "$root"/kept/bandtally/theatre-list-*)
[ "$(stat -c %a "$kept")" = 600 ] || fail 'others can read what was kept'
cmp -s "$kept" "$root/list.csv" || fail "kept: $(cat "$kept")"
ok 'four columns of it are kept, for nobody else to read'
printf 'date,room,slot,digit,patient\n%s,1,1,yes,SECRET\n' "$first" >"$root/bad.csv"
refuses 'a list with a further column is refused' 1 "a column 'patient'" report --json --list "$root/bad.csv"
! grep -rq SECRET "$root/out" "$root/err" "$root/cache" "$root/kept" || fail 'something of the list was kept or told'
cmp -s "$kept" "$root/list.csv" || fail 'what was kept is another'
ok 'nothing of it is told or kept, and what was kept stays'
printf 'date,room,slot,digit\n%s,2,1,yes\n' "$first" >"$root/later.csv"
says 'a list of another room' '3 places' report --json --list "$root/later.csv"
printf 'date,room,slot,digit\n%s,1,7,no\n' "$first" >"$root/later.csv"
says 'a later list takes the place of what its rooms and days had' '2 places' report --json --list "$root/later.csv"
cp "$kept" "$root/whole"
echo damaged >>"$kept"
refuses 'what was kept and is damaged is not passed over' 1 'remove that file' report --json
cp "$root/whole" "$kept"
: >"$root/no-folder"
XDG_DATA_HOME=$root/no-folder
says 'where it cannot be kept that is said, and it is used all the same' 'cannot be kept' report --json --list "$root/list.csv"
grep -q '"heads":\["Month","Planned"' "$root/out" || fail 'a list that cannot be kept is not used'
XDG_DATA_HOME=$root/kept

# One case of a record is too few, whatever is asked.
cp -r "$root/data" "$root/few"
rm "$root/few/record.db"
"$build/tests/make-record" "$root/few" 3 0
refused=$("$bin/bandtally" --data "$root/few" audit report --from 1970-01-01 --to 2199-01-01 --json 2>/dev/null)
echo "$refused" | grep -q 'no figure is shown' || fail 'three cases are shown'
echo "$refused" | grep -q 'figures":\[{' && fail 'three cases have figures'
ok 'too few cases are held back'
printf damaged >"$(echo "$root"/cache/bandtally/summary-*)"
says 'a summary that is damaged is made anew' 'it is no summary' report --json
says 'none is kept where none is wanted' 'summary:' report --json --summary none
