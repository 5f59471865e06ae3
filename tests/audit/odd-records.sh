#!/bin/sh
# Records that are long, short, empty or damaged: what a report says of them, and what all refuse.
#   odd-records.sh BUILD-FOLDER
set -eu
build=$1 cases=none
. "$(dirname "$0")/common"
record() { # NAME: of the lines on stdin
	mkdir "$root/$1"
	"$build/tests/play-cases" "$root/$1" || fail "no record $1 could be made"
	at=$root/$1
}
bt() { "$bin/bandtally" --data "$at" "$@"; }
report() { bt audit report "$@"; }
says_not() { ! grep -qF -- "$2" "$root/out" || fail "$1: it says '$2'"; }

ordinary='c1 b1 b2 g f b2 d2 w20 d2 c40 w1 c50 c41 f b2 d2 b3 s'
missed='c1 b1 b2 g f b2 d2 w20 d2 c40 w1 c50 c41 c11 c60 c15 c60 c62 c10 b2 d2 b3 s'
unresolved='c1 b1 b2 g b2 d11 w5 d11 c40 c50 c43 c5 c60 c15 c60 c15 c60 c15 c60 c15 c60 c15 c60 c15 c60 c61 c60 c15 c60 c15 c60 c5 b2 b3 t'

# Ten years, a case a week, every fourth with a discrepancy, but for one month in which nobody recorded any.
day=0
while [ $day -lt 3650 ]; do
	date -u -d "2017-01-02 09:00 UTC + $day days" "+%Y-%m-%dT%H:%M $((1 + day / 7 % 2)) $([ $((day / 7 % 4)) = 0 ] && echo "$missed" || echo "$ordinary")"
	day=$((day + 7))
done | grep -v '^2020-06' >"$root/weeks"
record years <"$root/weeks"
all=$(wc -l <"$root/weeks")
says 'ten years in one report' "cases,figure,cases,Recorded,$all,,," report --from 2017-01-01 --to 2026-12-31 --csv
points=$(grep -c '^minutes,point,minutes-finger,' "$root/out")
[ "$points" -gt 30 ] && [ "$points" -le 60 ] || fail "$points points of minutes"
points=$(grep -c '^discrepancies,.*,cases-between,2' "$root/out")
[ "$points" -gt 30 ] && [ "$points" -le 61 ] || fail "$points points between discrepancies"
grep '^discrepancies,says,cases-between,' "$root/out" | grep -q 'older' || fail 'older points are left out, and nothing says so'
ok 'its charts have as many points as can be read, and say what they leave out'
some=0
for year in 2017 2018 2019 2020 2021 2022 2023 2024 2025 2026; do
	report --year $year --csv >"$root/out" 2>/dev/null || fail "$year"
	some=$((some + $(sed -n 's/^cases,figure,cases,Recorded,\([0-9]*\),.*/\1/p' "$root/out")))
done
[ $some = "$all" ] || fail "the years have $some cases, all of them $all"
ok 'ten reports of a year have together what one of ten years has'
says 'a month in which nothing was recorded says that' 'That is not the same as no operation' report --month 2020-06 --csv
says_not 'and shows no figure' ',figure,'
says 'it is a row of the coverage' '"2020-06"' report --year 2020 --json --list /dev/stdin <<'LIST'
date,room,slot,digit
2020-05-04,1,1,yes
2020-06-08,1,1,yes
2020-06-09,1,1,yes
2020-07-06,1,1,yes
LIST
grep -o '"cells":\["2020-06"[^]]*' "$root/out" >"$root/row"
[ "$(cat "$root/row")" = '"cells":["2020-06","2","0","2","0","0"' ] || fail "the month with plans and without cases: $(cat "$root/row")"
ok 'with what was planned, and that nothing was recorded on those days'

# No event, one and two of those that charts count.
# of EVENTS: eight cases, of which so many had a discrepancy and so many ended unresolved
of() {
	for n in 1 2 3 4 5 6 7 8; do
		words=$ordinary
		[ $n -gt "$1" ] || words=$missed
		[ $((9 - n)) -gt "$1" ] || words=$unresolved
		echo "2026-02-0${n}T09:00 1 $words"
	done
}
for events in 0 1 2; do
	of $events >"$root/lines"
	record "events-$events" <"$root/lines"
	report --month 2026-02 --csv >"$root/report-$events" 2>"$root/err" || fail "$events events: $(cat "$root/err")"
done
has() { grep -qF -- "$2" "$root/report-$1" || fail "$1 events: no '$2'"; }
has 0 'unresolved-share,Of those that ended with a count,"0 of 8: not proof of none; up to 31 %'
has 0 'discrepancies,says,cases-between,,No chart: there was none.'
has 0 'unresolved,says,days-between,,No chart: there was none.'
! grep -qE '^(discrepancies|unresolved),(point|running)' "$root/report-0" || fail 'none has a chart'
! grep -q ',,100 %' "$root/report-0" || fail 'none is shown as perfect'
ok 'no event is no proof of none: its exact bound, and no chart'
has 1 'unresolved-share,Of those that ended with a count,"1 of 8: 12 % (95 % interval 0.32 to 53 %'
has 1 'unresolved,says,days-between,,No chart: too few yet.'
has 1 'fewer than 20 intervals make no limits: 2026-02-08'
! grep -qE '^unresolved,(point|running)' "$root/report-1" || fail 'one event has a chart'
ok 'one has its exact interval and its date, and no chart'
has 2 'unresolved-share,Of those that ended with a count,"2 of 8: 25 % (95 % interval 3.2 to 65 %'
has 2 'fewer than 20 intervals make no limits: 2026-02-07, 2026-02-08'
has 2 'discrepancies,point,cases-between,2026-02-07,4.000,,,none'
has 2 'Points only: fewer than 20 intervals make no limits.'
! grep -qE '^(discrepancies|unresolved),(point|running),[^,]*,[^,]*,[^,]*,[0-9]' "$root/report-2" || fail 'a few points have limits'
ok 'two have their dates, points without limits'
mkdir "$root/empty"
"$build/tests/make-record" "$root/empty" 0 0 || fail 'no empty record could be made'
at=$root/empty
says 'a record without a case says that none was recorded' 'No case was recorded' report --year 2026 --csv
says_not 'and shows no figure' ',figure,'
refuses 'and no slip is drawn of it' 1 '1 cannot be drawn of 0 slips' bt audit sample 1 --seed 1 --csv

# What never existed.
at=$root/events-2
for asked in '--line NEVER-A-LINE' '--lot NEVER' '--item 99999999' '--item item:NEVER' '--line NEVER-A-LINE --lot NEVER'; do
	# shellcheck disable=SC2086 # two words
	says "of $asked a trace says that the record has none" 'That is no proof that there was none' bt audit trace $asked --csv
	! grep -qE '^(forward|back),cell' "$root/out" || fail "$asked: something was found"
done
bt audit trace --help | grep -q '0 made, also where nothing was found' || fail 'which exit code that has is not told'
ok 'with the exit code that its usage names'

# Damaged: one sentence, its exit code, and nothing half.
# asked NAME COMMAND…: exit 1, one sentence that says so, nothing on stdout
asked() {
	name=$1
	shift
	code=0
	bt audit "$@" >"$root/out" 2>"$root/err" || code=$?
	[ $code = 1 ] || fail "$name, $*: exit code $code"
	[ "$(wc -l <"$root/err")" = 1 ] && grep -qE '^bandtally: .*(damaged|holds no record).*: keep the file' "$root/err" || fail "$name, $*: $(cat "$root/err")"
	[ ! -s "$root/out" ] || fail "$name, $*: half of it was told: $(head -c 300 "$root/out")"
}
damaged() { # NAME: of $root/hurt, by each command
	at=$root/hurt
	for form in '--json' '--csv' "--pdf $root/part.pdf" "--svg $root/part-svg" "--page $root/part.html"; do
		# shellcheck disable=SC2086
		asked "$1" report --year 2026 --summary none $form
	done
	asked "$1" trace --lot T1 --csv --summary none
	asked "$1" sample 3 --seed 1 --csv
	asked "$1" sample 3 --seed 1 --pdf "$root/part.pdf"
	asked "$1" case 2 --json
	asked "$1" export --json
	asked "$1" export --csv
	asked "$1" export --fhir 2
	[ -z "$(find "$root" -name 'part*')" ] || fail "$1: $(find "$root" -name 'part*')"
	[ -z "$(find "$root/hurt" -newer "$root/before" -type f)" ] || fail "$1: the record was touched"
	ok "$1: report, trace, sample, case and export say one sentence, and write nothing"
}
hurt() {
	rm -rf "$root/hurt"
	cp -r "$root/events-2" "$root/hurt"
	sleep 0.02
	: >"$root/before"
}
file=$root/hurt/record.db
sqlite3 "$root/events-2/record.db" 'PRAGMA wal_checkpoint(TRUNCATE); PRAGMA journal_mode=DELETE' >/dev/null
pages=$(($(stat -c %s "$root/events-2/record.db") / 4096))
hurt
truncate -s $((pages * 4096 / 2)) "$file"
touch -d '1 minute ago' "$file"
damaged 'a record of which half is missing'
hurt
echo 'no database' >"$file"
touch -d '1 minute ago' "$file"
damaged 'something that is no record'
hurt
: >"$file"
touch -d '1 minute ago' "$file"
damaged 'an empty file'
hurt
# every page of events from the middle on; the first ones can still be read
dd if=/dev/zero of="$file" bs=4096 seek=$((pages / 4)) count=$((pages / 2)) conv=notrunc 2>/dev/null
touch -d '1 minute ago' "$file"
damaged 'a record with a hole in its middle'

# Where nothing but one page of events is gone, in the middle, what goes through all of them tells none.
hurt
page=$(sqlite3 "$file" "SELECT pageno FROM dbstat WHERE name = 'event' AND pagetype = 'leaf' ORDER BY pageno LIMIT 1 OFFSET (SELECT count(*) / 2 FROM dbstat WHERE name = 'event' AND pagetype = 'leaf')")
dd if=/dev/zero of="$file" bs=4096 seek=$((page - 1)) count=1 conv=notrunc 2>/dev/null
at=$root/hurt
asked 'a record with a hole of one page' export --json
asked 'a record with a hole of one page' export --csv
asked 'a record with a hole of one page' report --year 2026 --summary none --json
ok 'one page of events that is gone is found before half of it is told'

# One event that cannot be read costs that event: it is named, and nothing is concluded from its absence.
hurt
lot=$(sqlite3 "$file" "SELECT json_extract(payload, '\$.thing.lot') FROM event WHERE kind = 'item-in' AND case_no = 2 LIMIT 1")
sqlite3 "$file" "DROP TRIGGER event_no_update; UPDATE event SET payload = '{broken' WHERE kind = 'item-in' AND case_no = 2"
says 'a report counts the case with an event that cannot be read' 'unfollowed,Cases with an event that could not be read,1,' report --year 2026 --csv --summary none
says 'a trace names it' 'it is not known whether they had it: 1 (2).' bt audit trace --lot "$lot" --csv --summary none
says 'one of another lot too' 'it is not known whether they had it: 1 (2).' bt audit trace --lot NEVER --csv --summary none
says 'the case shows where it stood' ',What,unreadable,' bt audit case 2 --csv
says 'so does the export' '"kind":"unreadable"' bt audit export --json
[ "$(wc -l <"$root/out")" = "$(sqlite3 "$file" 'SELECT count(*) FROM event')" ] || fail 'events are missing in the export'
ok 'with a line for each event'

# A full disk behind the answer is told as well.
at=$root/events-2
full() {
	code=0
	bt audit "$@" >/dev/full 2>"$root/err" || code=$?
	[ $code = 1 ] && grep -q 'not all of it could be written' "$root/err" || fail "$*: $code $(cat "$root/err")"
}
full export --json
full export --csv
full export --fhir 2
full report --year 2026 --csv
full trace --lot T1 --json
full case 2 --json
full sample 3 --seed 1 --csv
ok 'where there is no room for the answer that is said'
bt audit export --json 2>"$root/err" | head -n 1 >"$root/out"
[ ! -s "$root/err" ] || fail "whoever read enough is told: $(cat "$root/err")"
ok 'but not where somebody has read enough of it'
