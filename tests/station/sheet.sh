#!/bin/sh
# What `bandtally sheet` and the board show of a case, field by field: marked is not seen bare, missing is not shown, the
# sign-out is offered once everything for it is done, and search steps stand as answered one by one. When nothing can be
# stored, nothing is entered and both say: count by hand.
#   sheet.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
cat >"$data/station.ini" <<X
[site]
letters = BC
[room 1]
name = Theatre 1
[board]
start = no
X
trap '' XFSZ # a file that may not grow is an error of writing, and not the end
start
bt catalogue import "$source/config/catalogue.csv" >/dev/null
bt staff add --registered --number 1 practitioner SCRUB-1 >/dev/null
bt staff add --registered --number 2 practitioner CIRC-2 >/dev/null
bt label cards --list >"$root/codes"
bt label digits --list >>"$root/codes"
bt label badges --list >>"$root/codes"
scan() { # MEANING… by the words on the card, or a whole code
	for m in "$@"; do
		code=$(awk -F '\t' -v m="$m" '$3 == m { print $1 }' "$root/codes")
		bt scan "${code:-$m}" >"$root/said" || [ $? = 4 ] || fail "$m: $(cat "$root/said")"
	done
}
shows() { # SENTENCE FIELD VALUE
	bt sheet --json >"$root/view"
	is=$(sqlite3 :memory: "SELECT coalesce(json_extract(readfile('$root/view'), '\$.$2'), 'absent')")
	[ "$is" = "$3" ] || fail "$1: $2 is $is and not $3"
	echo "ok $1"
}
pack() { echo "(01)09506000134352(17)330331(10)T26(21)S$1"; }
[ "$(bt status --idle)" = 'no case is open' ] || fail 'a case is open before the first'
scan 'NEW CASE' SCRUB-1 CIRC-2 "$(pack 1)"
said=$(bt status --idle) && fail 'no exit code tells that a case is open' || refused=$?
[ "$refused: $said" = '3: 1 case is open (Theatre 1: case 1): the station is in use: wait until nothing is open' ] ||
	fail "what stands in the way of a stop: $refused: $said"
echo 'ok that a case is open is told, and where'
# As a monitor reads it, by its own parser.
watched() {
	bt status --prometheus | /usr/bin/python3 -c 'import sys
from prometheus_client.parser import text_string_to_metric_families as read
for family in read(sys.stdin.read()):
    assert family.documentation and family.type in ("gauge", "counter"), family
    for s in family.samples:
        print(s.name, *(f"{k}={v}" for k, v in sorted(s.labels.items())), f"{s.value:.0f}")' >"$root/watched"
}
watches() { # SENTENCE LINE…
	/usr/bin/python3 -c 'import prometheus_client' 2>/dev/null || return 0
	watched || fail "a monitor cannot read it: $(bt status --prometheus)"
	what=$1
	shift
	for line in "$@"; do
		grep -qx -- "$line" "$root/watched" || fail "$what: no '$line' in: $(cat "$root/watched")"
	done
	echo "ok $what"
}
watches 'a monitor sees the open case, and nothing of whose it is' 'bandtally_open_cases 1' 'bandtally_case_open room=1 1' \
	'bandtally_distrusted 0' 'bandtally_events_total [1-9][0-9]*' 'bandtally_up 1' 'bandtally_clock_wrong 0' 'bandtally_backup_age_seconds inf'
bt status --prometheus | grep -qE 'SCRUB|CIRC|S1|2110' && fail 'a name or a code'
[ "$("$bin/bandtally" --data "$root" status --prometheus 2>/dev/null | grep -v '^#')" = 'bandtally_up 0' ] || fail 'a monitor does not hear that the station is gone'
mkdir "$root/kept"
bt backup "$root/kept/record.db" >/dev/null
watches 'and how old its backup is' 'bandtally_backup_age_seconds [0-9]*' 'bandtally_events_not_in_backup [0-9]*'
scan 'right index finger' NO
shows 'a digit that is marked' 'digits[0].marked' 1
shows 'is not seen bare' 'digits[0].seen_bare' 0
scan CIRC-2 'right index finger'
shows 'the tourniquet is on' 'digits[0].state' on
shows 'and its place is told by a name' 'items[0].place' on
shows 'and in words' 'items[0].place_words' 'on a digit'
shows 'no final count has begun' 'case.final' none
scan 'right index finger' OFF 'FINAL COUNT' NO
shows 'the final count asks' 'case.final' asking
shows 'off is not yet accounted for' 'items[0].place' off
shows 'what is missing' 'items[0].missing' 1
shows 'is not shown' 'items[0].shown' 0
shows 'no search step is answered' 'search[0].state' open
reads() { # SENTENCE PATTERN
	bt sheet >"$root/sheet"
	grep -q "$2" "$root/sheet" || fail "$1: $(cat "$root/sheet")"
	echo "ok $1"
}
reads 'a discrepancy is the first word at the terminal' '^DISCREPANCY, search: 0 of [0-9]* steps answered; next: say it aloud'
reads 'with what is missing and where it was' 'MISSING: 1, was on the right index finger$'
scan 'STEP DONE'
reads 'and goes on with the search' '^DISCREPANCY, search: 1 of [0-9]* steps answered; next: count again'
shows 'the first is' 'search[0].state' 'done'
shows 'and the second is not' 'search[1].state' open
scan FOUND 'PIECES MISSING'
shows 'what is in pieces is not all shown' 'items[0].shown' 0
reads 'which the terminal says as well' ' 0  PIECES MISSING, was on the right index finger$'
bt case show 1 >"$root/case"
grep -q 'Finger tourniquet.* 1  *0  .*PIECES MISSING' "$root/case" || fail "the case counts it: $(cat "$root/case")"
grep -q 'say it aloud.*: done' "$root/case" || fail "the case says nothing of the search: $(cat "$root/case")"
scan FOUND INTACT
shows 'found, nothing is missing' 'items[0].missing' 0
shows 'but shown' 'items[0].shown' 1
shows 'and accounted for' 'items[0].place' accounted
scan CIRC-2
shows 'the final count is agreed' 'case.final' agreed
shows 'before the look at the digit there is no sign-out' 'case.sign_out' 0
scan 'right index finger'
shows 'it was seen bare' 'digits[0].seen_bare' 1
shows 'and then there is' 'case.sign_out' 1
next=$(bt sheet --json | sed 's/.*"next":"\([^"]*\)".*/\1/')

# No byte more than there is now.
prlimit --fsize="$(stat -c %s "$data/record.db-wal")": --pid "$daemon"
bt scan "$(awk -F '\t' '$3 == "AWAKE PATIENT" { print $1 }' "$root/codes")" >"$root/said" && fail 'entered without a place to store it'
grep -q 'NOT ENTERED' "$root/said" || fail "it is not said that nothing was entered: $(cat "$root/said")"
echo 'ok what cannot be stored is not entered'
shows 'nothing has changed' 'awake' 0
shows 'count by hand' 'next' 'Count by hand on the paper sheet.'
watches 'a monitor is told as well' 'bandtally_distrusted 1'
prlimit --fsize=unlimited: --pid "$daemon"
scan 'AWAKE PATIENT'
shows 'the next scan is stored' 'awake' 1
shows 'and the station goes on where it was' 'next' "$next"
stop
bt audit verify | grep -q 'numbered without a gap' || fail 'the record does not hold'
echo 'ok the record holds'
