#!/bin/sh
# A paper count sheet is entered by its own code, once; one that must have been taken before it is owed, on the board and in
# `bandtally status`, through a restart, until it is entered as well (rule 17).
#   paper-sheet.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
cat >"$data/station.ini" <<X
[site]
letters = BC
[room 1]
name = Theatre 1
[room 2]
name = Theatre 2
[board]
start = no
X
start
bt label paper-sheet --room 1 --list >"$root/sheets"
bt label cards --room 1 --list >"$root/cards"
[ "$(wc -l <"$root/sheets")" = 10 ] || fail 'there are not ten sheets'
sheet() { awk -v n="$1" -F '\t' '$3 == "paper count sheet " n { print $1 }' "$root/sheets"; }
card() { awk -v m="$1" -F '\t' '$3 == m { print $1 }' "$root/cards"; }
cancel() {
	bt scan "$(card CANCEL)" >/dev/null || [ $? = 4 ] || fail 'CANCEL'
	bt scan "$(card YES)" >/dev/null || fail 'YES'
}
says() { # SENTENCE EXIT-CODE PATTERN CODE
	code=0
	said=$(bt scan "$4") || code=$?
	[ "$code" = "$2" ] || fail "$1: exit code $code: $said"
	case $said in *"$3"*) echo "ok $1" ;; *) fail "$1: $said" ;; esac
}
owed() { bt status | sed -n 's/^FAULT: Paper sheet \([0-9]*\) of Theatre 1 is owed.*/\1/p' | tr '\n' ' '; }
[ -z "$(owed)" ] || fail 'sheets are owed on a fresh station'
says 'sheet 3 opens the late entry' 0 'from paper sheet 3' "$(sheet 3)"
says 'as it is printed, in groups, it is the same sheet' 3 'is open' "$(sheet 4 | sed 's/..../& /g')"
cancel
[ "$(owed)" = '1 2 ' ] || fail "owed: $(owed)"
echo 'ok sheets 1 and 2 are owed'
says 'sheet 3 is not entered twice' 3 'was entered already' "$(sheet 3)"
says 'the sheet of another room is announced' 3 'Theatre 2' "$(bt label paper-sheet --room 2 --list | awk -F '\t' 'NR == 4 { print $1 }')"
stop
start
[ "$(owed)" = '1 2 ' ] || fail "owed after a restart: $(owed)"
says 'sheet 2 is entered' 0 'from paper sheet 2' "$(sheet 2)"
cancel
[ "$(owed)" = '1 ' ] || fail "owed: $(owed)"
rm -f "$data/snapshot"
stop
start
[ "$(owed)" = '1 ' ] || fail "owed by the record alone: $(owed)"
says 'sheet 1 was not used: entered' 0 'from paper sheet 1' "$(sheet 1)"
cancel
[ -z "$(owed)" ] || fail "owed: $(owed)"
echo 'ok nothing is owed any more'
stop
unmarked="SELECT count(*) FROM event WHERE case_no = 1 AND kind IN ('case-opened', 'case-ended') AND payload NOT LIKE '%\"late\":true%'"
[ "$(sqlite3 "$data/record.db" "$unmarked")" = 0 ] || fail "what was entered is not marked late: $(sqlite3 "$data/record.db" "$unmarked")"
echo 'ok what was entered is marked late'
