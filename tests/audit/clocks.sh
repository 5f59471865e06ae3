#!/bin/sh
# Months end at the midnight of where the station stands, whoever asks from wherever; an hour that comes twice is told apart;
# clocks that are put forward or back, and power cuts, change no minutes on a digit.
#   clocks.sh BUILD-FOLDER
set -eu
build=$1 cases=none
. "$(dirname "$0")/common"
[ -e /usr/share/zoneinfo/Europe/Berlin ] || { echo 'skipped: no time zones (tzdata)'; exit 77; }

# record NAME: of the lines on stdin, in $root/NAME
record() {
	mkdir "$root/$1"
	TZ=Europe/Berlin "$build/tests/play-cases" "$root/$1" || fail "no record $1 could be made"
	at=$root/$1
}
# Asked from where the clocks say something else.
bt() { TZ=Pacific/Auckland "$bin/bandtally" --data "$at" "$@"; }
value() { sqlite3 :memory: "SELECT json_extract(f.value, '\$.x') FROM json_each(readfile('$1'), '\$.sections') s, json_each(s.value, '\$.figures') f WHERE json_extract(f.value, '\$.name') = '$2'"; }
# month YYYY-MM CASES: a report of it has so many
month() {
	bt audit report --month "$1" --json >"$root/out" 2>"$root/err" || fail "$1: $(cat "$root/err")"
	grep -q "^report: $2 cases" "$root/err" || fail "$1 has other cases than $2: $(cat "$root/err")"
}
# on CASE: how long the digit had it, in seconds, by the clock that nobody can set
on() { sqlite3 "$at/record.db" "SELECT sum(CASE kind WHEN 'digit-off' THEN 1 ELSE -1 END * json_extract(payload, '\$.boot_ms')) / 1000 FROM event WHERE case_no = $1 AND kind IN ('digit-on', 'digit-off')"; }

record months <<'LINES'
2026-03-31T20:30 1
2026-03-31T22:30 1
2026-10-31T22:15 1
2026-10-31T23:15 1
2026-12-31T22:30 1
2026-12-31T23:30 2
LINES
month 2026-03 1
month 2026-04 1
month 2026-10 1
month 2026-11 1
month 2026-12 1
month 2027-01 1
ok 'the last day of a month ends at midnight of where the station stands, in summer and in winter'
bt audit trace --lot T1 --csv >"$root/out" 2>/dev/null
bt audit sample 6 --seed 1 --csv >"$root/drawn"
grep ',Date,' "$root/drawn" | cut -d , -f 5 | tr '\n' ' ' >"$root/days"
[ "$(cat "$root/days")" = '2026-03-31 2026-04-01 2026-10-31 2026-11-01 2026-12-31 2027-01-01 ' ] || fail "the days of slips: $(cat "$root/days")"
ok 'slips are of the day that it was there'
printf 'date,room,slot,digit\n2026-03-31,1,1,yes\n2026-04-01,1,1,yes\n2026-11-01,1,1,yes\n2026-12-31,1,1,yes\n' >"$root/list.csv"
bt audit sample 4 --seed 1 --csv --list "$root/list.csv" >"$root/out" || fail 'no planned operation is drawn'
[ "$(grep ',Cases recorded that day,' "$root/out" | cut -d , -f 5 | tr '\n' ' ')" = '1 1 1 1 ' ] || fail "cases of planned days: $(cat "$root/out")"
ok 'and so are the cases of a planned day'

# 02:00 becomes 03:00 on the last Sunday of March; 03:00 becomes 02:00 on that of October.
minutes='c1 b1 b2 g f b2 d2 w40 d2 c40 w1 c50 c41 f b2 d2 b3 s'
record changes <<LINES
2026-03-22T00:40 1 $minutes
2026-03-29T00:40 1 $minutes
2026-03-29T02:10 1 $minutes
2026-10-25T00:30 1 $minutes
2026-10-25T01:30 2 $minutes
2026-11-01T00:40 1 $minutes
LINES
first=$(on 1)
for case_no in 2 3 4 5 6; do
	[ "$(on "$case_no")" = "$first" ] || fail "case $case_no: $(on "$case_no") s and not $first"
done
bt audit report --year 2026 --json >"$root/out" 2>/dev/null
grep -o '"cells":\["all","6",[^]]*' "$root/out" >"$root/row" || fail 'there is no row of minutes'
[ "$(cat "$root/row")" = '"cells":["all","6","40.3","40.3","40.3","6","0","0"' ] || fail "minutes on a digit: $(cat "$root/row")"
ok 'minutes on a digit are the same on days with 23, 24 and 25 hours'
[ "$(value "$root/out" clock)" = 0 ] || fail 'a clock that was put back is taken for one that cannot be trusted'
ok 'and nobody takes it for a clock that is wrong'
month 2026-03 3
month 2026-10 2
ok 'both cases of half past two are of that day'
for case_no in 4 5; do
	bt audit case "$case_no" --csv >"$root/case-$case_no"
done
grep -q ',Time,2026-10-25 02:30:06+02:00' "$root/case-4" || fail "half past two in summer time is not told apart: $(grep -m 1 ,Time, "$root/case-4")"
grep -q ',Time,2026-10-25 02:10:.*+01:00' "$root/case-4" || fail 'nor ten past two after it'
grep -q ',Time,2026-10-25 02:30:06,' "$root/case-5" || fail 'a case in which no clock changed has zones in it'
grep ',Time,' "$root/case-4" | cut -d , -f 5 | while read -r when; do date -d "$when" +%s; done >"$root/seconds"
sort -nc "$root/seconds" || fail 'its events are not in the order of time'
ok 'in a case during which clocks change each time says which of both it is'
bt audit export --csv | grep ',case-opened,' | cut -d , -f 4 | grep '^2026-10' | tr '\n' ' ' >"$root/out"
[ "$(cat "$root/out")" = '2026-10-25T02:30:06+02:00 2026-10-25T02:30:06+01:00 ' ] || fail "as CSV both are: $(cat "$root/out")"
ok 'and so does the export'

# Nobody knows what happened while there was no power: then it is 'at least', and counted apart.
cut='c1 b1 b2 g f b2 d2 w20 p30 d2 c40 w1 c50 c41 f b2 d2 b3 s'
record cuts <<LINES
2026-03-29T00:40 1 $cut
2026-10-25T00:40 1 $cut
2026-11-02T09:00 1
2026-11-03T09:00 1
2026-11-04T09:00 1
LINES
bt audit report --year 2026 --json >"$root/out" 2>/dev/null
[ "$(value "$root/out" power-cuts)" = 2 ] || fail "cases with a gap: $(value "$root/out" power-cuts)"
grep -o '"cells":\["all",[^]]*' "$root/out" | grep -q '"2"$' || fail "the minutes do not say which are over a power cut: $(grep -o '"cells":\["all",[^]]*' "$root/out")"
ok 'cases with a power cut are counted apart'
[ "$(grep -o '"cells":\["all",[^]]*' "$root/out")" = '"cells":["all","5","20.3","not known","at least 20.3","5","0","2"' ] || fail 'what is over a power cut is not called the least that it was'
ok 'and their minutes are called the least that it was'
