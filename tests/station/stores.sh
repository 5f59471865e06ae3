#!/bin/sh
# What stores do by command reaches the table: quarantine refuses and release lets in again; the labels of two batches
# follow each other and share no number; and what is shown of a case is no slip.
#   stores.sh FOLDER-OF-PROGRAMS
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
start
bt catalogue import "$source/config/catalogue.csv" >/dev/null
card() { bt label cards --list | awk -F '\t' -v m="$1" '$3 == m { print $1 }'; }
scan() { bt scan "$1" 2>&1 || true; }
must() { # SENTENCE WORDS WHAT-WAS-SAID
	case $3 in
	*"$2"*) echo "ok $1" ;;
	*) fail "$1: $3" ;;
	esac
}
scan "$(card 'NEW CASE')" >/dev/null
bt stock quarantine GREEN-M --lot T26 --why 'recalled by the maker' >/dev/null
must 'a lot in quarantine is refused, with the reason' 'recalled by the maker' "$(scan '(01)09506000134352(17)330331(10)T26(21)S1')"
must 'another lot is counted in' 'Counted in' "$(scan '(01)09506000134352(17)330331(10)T27(21)S2')"
for name in STORES-1 STORES-2 STORES-3; do bt staff add practitioner $name >/dev/null; done
bt staff withdraw 3
for badges in '--by 1 --and 1' '--by 1 --and 3' '--by 1 --and 9'; do
	# shellcheck disable=SC2086
	must "nobody releases with $badges" 'not released' "$(bt stock release GREEN-M --lot T26 $badges 2>&1 || true)"
done
must 'what one alone would release is refused still' 'recalled by the maker' "$(scan '(01)09506000134352(17)330331(10)T26(21)S1')"
# What is not in quarantine is not said to be released from it, and an empty lot is not every lot.
must 'a lot of another name' 'of GREEN-M the lot T26 is in quarantine' "$(bt stock release GREEN-M --lot t26 --by 1 --and 2 2>&1 || true)"
must 'the whole line, of which a lot is held' 'of GREEN-M the lot T26 is in quarantine' "$(bt stock release GREEN-M --by 1 --and 2 2>&1 || true)"
must 'a line that is not held' 'is not in quarantine' "$(bt stock release FORCEPS --by 1 --and 2 2>&1 || true)"
must 'an empty lot' 'left out, it is the whole line' "$(bt stock release GREEN-M --lot '' --by 1 --and 2 2>&1 || true)"
must 'what was not released is refused still' 'recalled by the maker' "$(scan '(01)09506000134352(17)330331(10)T26(21)S1')"
bt stock quarantine GREEN-M --why 'looked into' >/dev/null
must 'a lot of a line that is held as a whole' 'with the whole of GREEN-M: looked into' "$(bt stock release GREEN-M --lot T26 --by 1 --and 2)"
must 'and no lot of it is' 'GREEN-M as a whole is in quarantine' "$(bt stock release GREEN-M --lot T26 --by 1 --and 2 2>&1 || true)"
bt stock release GREEN-M --by 1 --and 2 >/dev/null
bt stock quarantine GREEN-M --lot T26 --why 'recalled by the maker' >/dev/null
bt stock release GREEN-M --lot T26 --by 1 --and 2 >/dev/null
must 'a recall says what is held and who has one open' 'open now: case 1 in Theatre 1' "$(bt stock recall GREEN-M --lot T27)"
must 'without a bench a recall does not claim that no case used one' 'no case has told stores what it took' "$(bt stock recall GREEN-M --lot T27)"
must 'what was released is counted in' 'Counted in' "$(scan '(01)09506000134352(17)330331(10)T26(21)S1')"
bt label pack --line GREEN-M --lot A --count 3 --pdf "$root/a.pdf" >/dev/null
bt label pack --line GREEN-M --lot B --count 2 --pdf "$root/b.pdf" >/dev/null
bt case show 1 --json >"$root/case"
grep -q '"room"' "$root/case" || fail "nothing is shown of the case: $(cat "$root/case")"
for field in jws code slip copy; do
	! grep -q "\"$field\":" "$root/case" || fail "what is shown of a case names a slip's $field"
done
echo 'ok what is shown of a case is no slip'
stop
sqlite3 "$data/record.db" "SELECT json_extract(payload, '\$.batch.lot', '\$.batch.first', '\$.batch.last')
	FROM event WHERE kind = 'labelled' ORDER BY seq" >"$root/batches"
[ "$(cat "$root/batches")" = '["A",1,3]
["B",4,5]' ] || fail "two batches of labels share a number, or leave one out: $(cat "$root/batches")"
echo 'ok the labels of two batches follow each other'
