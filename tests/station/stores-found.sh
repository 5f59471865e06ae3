#!/bin/sh
# A case ends without its forceps: stores are told which trays are short and which case misses one; what comes back acts on
# that case, and where no case misses one none is charged. The whole list by the command.
#   stores-found.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
cat >"$data/station.ini" <<S
[site]
letters = BC
[room 1]
name = Theatre 1
[room 9]
name = Stores
kind = stores
[board]
start = no
S
start
bt catalogue import "$source/config/catalogue.csv" >/dev/null
for who in 'practitioner SCRUB-1' 'practitioner CIRC-2' 'surgeon SURG-3'; do
	# shellcheck disable=SC2086
	bt staff add --registered $who >/dev/null
done
{
	bt label cards --list
	bt label digits --list
} >"$root/cards"
badges=$(bt label badges --list)
scan() { # WORDS: the card, digit or badge that says so, or a code
	code=$(awk -F '\t' -v w="$1" '$3 == w { print $1; exit }' "$root/cards")
	[ -n "$code" ] || code=$(echo "$badges" | awk -F '\t' -v w="$1" 'index($0, w) { print $1; exit }')
	bt scan --room 1 "${code:-$1}" 2>&1 || true
}
must() { # SENTENCE WORDS WHAT-WAS-SAID
	case $3 in
	*"$2"*) echo "ok $1" ;;
	*) fail "$1: $3" ;;
	esac
}
list() { bt stock shortfalls "$@" | tr -s ' \n' ' '; }

unresolved() {
	i=0
	until scan 'END UNRESOLVED' >"$root/said"; grep -q 'surgeon decides' "$root/said"; do
		i=$((i + 1))
		[ "$i" -lt 20 ] || fail "the search does not end: $(cat "$root/said")"
		scan 'STEP DONE' >/dev/null
		scan NEXT >/dev/null
	done
	for what in SURG-3 'NOT DONE'; do scan "$what" >"$root/said"; done
}
must 'nothing is short before' 'that each may come from: none that the station knows of Ended cases that miss one: none that the station knows of What was found, the last first: nothing was entered as found' "$(list)"
for what in 'NEW CASE' SCRUB-1 CIRC-2 '(01)09506000134352(17)330331(10)T26(21)S1' '(8004)9506000FC53' CIRC-2 \
	'right middle finger' OFF 'FINAL COUNT' INTACT; do scan "$what" >/dev/null; done
must 'the forceps are not there' DISCREPANCY "$(scan NO)"
unresolved
grep -q 'Case 1 ended UNRESOLVED' "$root/said" || fail "the case does not end: $(cat "$root/said")"
must 'the trays are named that lack one' 'FORCEPS 1 case 1 Theatre 1 TRAY-HAND (its list has 2)' "$(list)"
must 'and the case that misses it' 'Ended cases that miss one: case 1 Theatre 1 FORCEPS lot - 1 What was found' "$(list)"
bt stock came-back FORCEPS >/dev/null
today=$(date +%Y-%m-%d)
must 'what was found is told with its case and slip' "the last first: $today Stores FORCEPS case 1, slip 0000002" "$(list)"
must 'nothing is short any more' 'from: none that the station knows of Ended cases that miss one: none' "$(list)"
bt stock came-back FORCEPS >/dev/null
must 'another one is charged to no case' "the last first: $today Stores FORCEPS no case missed one: bandtally stock found FORCEPS $today" "$(list)"
must 'since another day nothing was' 'nothing was entered as found' "$(list --since 20990101)"
must 'the same as JSON' '"case":1,"day":' "$(list --json)"
bt stock shortfalls FORCEPS 2>"$root/said" && fail 'a word too many is taken'
must 'a word too many is wrong usage' FORCEPS "$(cat "$root/said")"

# --- a lot that is none of the case's, and a slip that names another case
for what in 'NEW CASE' SCRUB-1 CIRC-2 '(01)09506000134352(17)330331(10)T26(21)S2' CIRC-2 'right middle finger' OFF 'FINAL COUNT'; do scan "$what" >/dev/null; done
must 'the tourniquet is not there' DISCREPANCY "$(scan NO)"
unresolved
must 'its case misses it' 'case 2 Theatre 1 GREEN-M lot T26 1' "$(list)"
must 'one of another lot is not charged to it' 'No case misses finger tourniquet, green, M of lot T99' "$(bt stock came-back GREEN-M --lot T99 2>&1)"
must 'a line and a slip are one too many' 'give LINE or --slip' "$(bt stock came-back GREEN-M --slip x 2>&1 || true)"
must 'the case goes on missing it' 'case 2 Theatre 1 GREEN-M lot T26 1' "$(list)"
must 'the lot that it had is' 'comes from case 2' "$(bt stock came-back GREEN-M --lot T26 2>&1)"
