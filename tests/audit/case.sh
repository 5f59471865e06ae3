#!/bin/sh
# What `bandtally audit case` tells: every event in order, what was due, and nobody's name unless that is recorded.
#   case.sh BUILD-FOLDER
set -eu
build=$1
. "$(dirname "$0")/common"
asked() { sqlite3 "$root/data/record.db" "$1"; }
case_no=$(asked "SELECT case_no FROM event WHERE kind = 'discrepancy' ORDER BY seq LIMIT 1")
says 'a case is told' 'case-opened' bt audit case "$case_no" --csv
of_case=$(asked "SELECT count(*) FROM event WHERE case_no = $case_no")
[ "$(grep -c ',What,' "$root/out")" -ge "$of_case" ] || fail "not every event of case $case_no is told"
ok 'with every event of it'
grep ',Time,' "$root/out" | cut -d , -f 5 >"$root/times"
sort -c "$root/times" || fail 'they are not in order'
ok 'in the order of time'
asked "SELECT DISTINCT json_extract(payload, '\$.text') FROM event WHERE kind = 'joined' AND case_no = $case_no" >"$root/names"
[ -s "$root/names" ] || fail 'nobody is there'
! grep -qFf "$root/names" "$root/out" || fail 'somebody is named'
grep -qF 'at the field' "$root/out" || fail 'no place is told'
ok 'people stand by their place, and nobody is named'
refuses 'names are not given where it cannot be recorded' 1 'not running' bt audit case "$case_no" --people 'inquest 7' --csv
says 'on paper too' '' bt audit case "$case_no" --pdf "$root/case.pdf"
pdftotext -layout "$root/case.pdf" "$root/text"
grep -q 'One case, in time order' "$root/text" || fail 'the paper says something else'
bt audit case "$case_no" --json >"$root/out"
left=$(asked "SELECT count(*) FROM event WHERE kind = 'slip-queued' AND case_no = $case_no")
[ "$left" = 0 ] || grep -q 'was not seen' "$root/out" || ok 'its slips were seen'
case_no=$(asked "SELECT max(case_no) FROM event")
says 'what was due is told' 'Due, and not done' bt audit case "$case_no" --json
grep -q 'The case has not ended' "$root/out" || grep -q 'case-ended' "$root/out" || fail 'an open case has ended'
refuses 'a case that never was' 1 'has none of that number' bt audit case 99999 --json
refuses 'no number is wrong usage' 2 'CASE' bt audit case --json
refuses 'two forms at once' 2 'one of --json' bt audit case 1 --json --csv

# Where the station runs, the look is recorded, and then the names are given.
cat >"$root/data/station.ini" <<X
[site]
letters = BC
[room 1]
name = Theatre 1
[board]
start = no
X
case_no=$(asked "SELECT min(case_no) FROM event WHERE kind = 'case-opened'")
"$bin/bandtallyd" --data "$root/data" 2>"$root/log" &
daemon=$!
trap 'kill $daemon 2>/dev/null || true; rm -rf "$root"' EXIT
tries=200
until bt status >/dev/null 2>&1; do
	[ $((tries -= 1)) -gt 0 ] || fail "the station does not start: $(cat "$root/log")"
	sleep 0.05
done
bt audit case "$case_no" --people 'inquest 7' --csv >"$root/out" || fail 'the names were not given'
kill "$daemon"
wait "$daemon" || true
grep -qFf "$root/names" "$root/out" || fail 'nobody is named though it was asked for'
asked "SELECT payload FROM event WHERE kind = 'audited'" | grep -q '"n":'"$case_no"',.*"text":"inquest 7"' || fail 'the look is not in the record'
ok 'with --people names are given, and the record says who looked and why'
