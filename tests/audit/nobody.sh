#!/bin/sh
# Nobody is told of alone, and nobody by name but where a reason is recorded: few cases and few people are held back, signs of
# work-arounds stand beside what they do not prove, and a case tells of places, in records of old as well.
#   nobody.sh BUILD-FOLDER
set -eu
build=$1 cases=60
. "$(dirname "$0")/common"
at=$root/data
bt() { "$bin/bandtally" --data "$at" "$@"; }
names() { sqlite3 "$1/record.db" "SELECT DISTINCT json_extract(payload, '\$.staff.name') FROM event WHERE kind = 'staff-set'"; }

# A week of hands: two answers and two looks were fast, two badges close, and six times five scans came evenly.
mkdir "$root/signs"
"$build/tests/play-cases" "$root/signs" <<'LINES' || fail 'no record could be made'
2026-03-02T09:00 1 c1 b1 b2 g f b2 d2 q7000 w20 d2 q6000 c40 w6 q9000 c50 q5000 c41 f b2 d2 q8000 b3 s
2026-03-03T09:00 1 c1 b1 b2 g f b2 d2 w20 d2 c40 w6 c50 q800 c41 q7000 f q5000 b2 q11000 d2 q8000 b3 s
2026-03-04T09:00 1 c1 b1 q2000 b2 q6000 g f b2 d2 w20 d2 c40 w6 c50 q800 c41 q7000 f q5000 b2 q3000 d2 q8000 b3 s
2026-03-05T09:00 1 c1 b1 b2 q5000 g q9000 f b2 q20000 d2 w20 d2 c40 w6 q3000 c50 q8000 c41 q2000 f q9000 b2 q3000 d2 q30000 b3 s
2026-03-06T09:00 1
2026-03-06T10:00 2
LINES
at=$root/signs
row() { grep "^$1,cell,$1 row $2," "$root/out" | cut -d , -f 5 | tr '\n' ' '; }
says 'signs of work-arounds are told by room and week' 'Even: 5 scans in a row' bt audit report --month 2026-03 --csv
[ "$(row signs 1)" = 'Theatre 1 2026-03-02 5 2 2 1 0 6 ' ] || fail "the first week of the first room: $(row signs 1)"
ok 'each under its head'
grep -q '^signs,says,,,"They prove nothing' "$root/out" || fail 'nothing says that they prove nothing'
ok 'with the sentence that they prove nothing'
[ "$(row signs 2)" = 'Theatre 2 2026-03-02 (held back) (held back) (held back) (held back) (held back) (held back) ' ] || fail "one case of a room: $(row signs 2)"
[ "$(row rooms 2)" = 'Theatre 2 (held back) (held back) (held back) ' ] || fail "one case of a room: $(row rooms 2)"
[ "$(row rooms 1)" = 'Theatre 1 (held back) (held back) (held back) ' ] || fail "from what is shown the one case can be worked out: $(row rooms 1)"
ok 'one case of a room is held back, and what it could be worked out from'
says 'a room with enough cases is shown alone' 'signs,cell,signs row 1,Room,Theatre 1' bt audit report --month 2026-03 --room 1 --csv
[ "$(row rooms 1)" = 'Theatre 1 5 0 0 ' ] || fail "five cases of a room: $(row rooms 1)"
says 'one without is not' 'no figure is shown' bt audit report --month 2026-03 --room 2 --csv
! grep -q ',figure,' "$root/out" || fail 'one case of a room has figures'
names "$at" >"$root/names"
bt audit report --month 2026-03 --json >"$root/out" 2>/dev/null
! grep -qFf "$root/names" "$root/out" || fail 'a report names somebody'
ok 'and no report names anybody'

# Each case of each record, of everything that was ever refused, asked or said in it.
cases_of() { sqlite3 "$at/record.db" 'SELECT DISTINCT case_no FROM event WHERE case_no > 0'; }
nobody_in() { # FOLDER
	mkdir "$root/asked"
	cp "$1/record.db" "$root/asked/"
	[ ! -e "$1/record.db-wal" ] || cp "$1/record.db-wal" "$root/asked/"
	at=$root/asked
	sqlite3 "$at/record.db" 'PRAGMA wal_checkpoint(TRUNCATE)' >/dev/null
	names "$at" >"$root/names"
	[ -s "$root/names" ] || fail "nobody has a badge in $1"
	told=0
	for case_no in $(cases_of); do
		bt audit case "$case_no" --csv >"$root/out" || fail "case $case_no of $1"
		! grep -qFf "$root/names" "$root/out" || fail "case $case_no of $1 names somebody: $(grep -Ff "$root/names" "$root/out" | head -n 1)"
		told=$((told + 1))
	done
	rm -rf "$root/asked"
}
for kept in "$root/data" "$BANDTALLY_SOURCE"/tests/kept/format-*/*/; do
	[ -e "$kept/record.db" ] || continue
	nobody_in "$kept"
	ok "none of $told cases of $(basename "$kept") names anybody"
done
