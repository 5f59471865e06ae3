#!/bin/sh
# Practice at the living station: a whole case with the codes of the practice set, its slip marked across, the first real
# code that ends it; and the record, its head, its copies, figures and slips as they were before.
#   practice.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
for needs in python3 pdftotext; do command -v $needs >/dev/null || skip "$needs is not installed"; done
printf '[site]\nletters = BC\nname = Example Hospital\n[room 1]\nname = Theatre 1\n' >"$data/station.ini"
# The same code of the practice set: another letter, and its own check digits.
of_set() {
	python3 - "$1" <<'PY'
import sys
text = 'BX' + sys.argv[1][2:]
digits = ''.join(str(int(c, 36)) for c in text + '00')
print('%s%02d' % (text, 98 - int(digits) % 97))
PY
}
scan() { # CODE WORDS
	bt scan "$1" >"$root/said" 2>&1 || true
	grep -q -- "$2" "$root/said" || fail "not '$2': $(cat "$root/said")"
	echo "ok $2"
}
practise() { scan "$(of_set "$1")" "$2"; } # CODE-WITHOUT-CHECK WORDS
record() { # what the station keeps of cases, byte by byte
	(cd "$data" && find record.db record.db-wal head slips snapshot station.key station.pub.json -type f -print0 2>/dev/null |
		sort -z | xargs -0 sha256sum)
}
start
bt staff add --registered practitioner CIRC-2 >/dev/null
bt audit verify | tail -n 1 >"$root/verified"
record >"$root/before"
stands() { grep -c 'the record stands at event' "$root/log"; } # in the journal, as evidence
stood=$(stands)

practise BTBC101001 'Practice: Case 1 opened'
[ -e "$data/practice/1/record.db" ] || fail 'practice has no record of its own'
practise BTBC101073 'practice card shows no picture'
practise BTBC3000001 'at the field'
practise BTBC3000002 'circulating'
practise BTBC7000001 'Counted in: 1 practice tourniquet'
practise BTBC7000002 'Counted in: 1 practice forceps'
practise BTBC3000002 'agreed aloud'
practise BTBC20102 'Tourniquet on, right index finger'
bt sheet | head -n 1 | grep -q '^PRACTICE' || fail 'the sheet does not say that it is practice'
practise BTBC20102 'Tourniquet on the right index finger'
practise BTBC101040 'Off, right index finger'
practise BTBC101050 'Final count'
practise BTBC101041 'ccounted for'
practise BTBC101010 'ccounted for'
practise BTBC3000002 'agreed aloud'
practise BTBC20102 'seen bare'
practise BTBC3000003 'ended reconciled'
slip="$data/practice/1/slips/practice-1-slip-0000001.pdf"
soon 'the slip of practice is written, into its own folder' '[ -s "$slip" ]'
pdftotext -raw "$slip" "$root/slip.txt"
[ -z "${BANDTALLY_KEEP:-}" ] || cp "$slip" "$BANDTALLY_KEEP"
grep -q 'this paper is about no patient' "$root/slip.txt" || fail 'the slip does not say that it is practice'
code=$(tr -d ' ' <"$root/slip.txt" | grep -o 'BXBC4[0-9]*' | head -n 1)
scan "$code" 'Practice: Slip 0000001'
[ ! -e "$data/slips/practice-1-slip-0000001.pdf" ] || fail 'a slip of practice lies among the real ones'

record >"$root/after"
diff "$root/before" "$root/after" || fail 'practice changed what the station keeps'
[ "$(stands)" = "$stood" ] || fail 'the journal says where a record of practice stands'
bt audit verify | tail -n 1 | diff "$root/verified" - || fail 'practice stands in the record'
bt case list | grep -q 'reconciled' && fail 'a case of practice is listed'
bt print list | grep -q '0000001' && fail 'a slip of practice is listed'
bt backup "$root/backup" >/dev/null
! tar -tf "$root/backup" 2>/dev/null | grep -q practice || fail 'practice lies in the backup'
grep -q -a 'practice tourniquet' "$root/backup" && fail 'practice lies in the backup'
echo 'ok record, head, slips, list, audit and backup have nothing of it'

practise BTBC101001 'Practice: Case 2 opened'
scan "$(bt label cards --list | awk -F '\t' '$3 == "NEW CASE" { print $1 }')" '^accepted: Case 1 opened in Theatre 1'
[ ! -e "$data/practice/1" ] || fail 'practice is over, and its record is there'
practise BTBC20102 'nothing of it was entered in case 1, which is real'
bt sheet | grep -q PRACTICE && fail 'the sheet of a real case says practice'
scan "$(bt label cards --list | awk -F '\t' '$3 == "CANCEL" { print $1 }')" 'Cancel this case'
scan "$(bt label cards --list | awk -F '\t' '$3 == "YES" { print $1 }')" 'ended'

# The printed exercises, step by step as they stand there: each step is taken, and each ends its case.
bt label practice --list >"$root/set"
for n in 1 2 3; do
	awk -F '\t' -v n="$n." 'index($3, n) == 1 { print $1 }' "$root/set" >"$root/steps"
	while read -r step; do
		bt scan "$step" >"$root/said" 2>&1 </dev/null || true
		grep -q '^refused' "$root/said" && fail "exercise $n, $step: $(cat "$root/said")"
	done <"$root/steps"
	grep -q "Practice: Case $n ended reconciled" "$root/said" || fail "exercise $n: $(cat "$root/said")"
	echo "ok exercise $n, $(wc -l <"$root/steps") steps"
done
cut -f 1 "$root/set" | grep -v '^BX' && fail 'a code of the set is none of practice'
scan "$(bt label cards --list | awk -F '\t' '$3 == "NEW CASE" { print $1 }')" '^accepted: Case 2 opened'
scan "$(bt label cards --list | awk -F '\t' '$3 == "CANCEL" { print $1 }')" 'Cancel this case'
scan "$(bt label cards --list | awk -F '\t' '$3 == "YES" { print $1 }')" 'ended'

practise BTBC101001 'Practice: Case 1 opened'
kill -KILL "$daemon"
wait "$daemon" || true
[ -e "$data/practice/1/record.db" ] || fail 'the test needs what a killed station leaves'
start
[ ! -e "$data/practice" ] || fail 'practice outlived a restart'
practise BTBC101001 'Practice: Case 1 opened'
stop
[ ! -e "$data/practice" ] || fail 'practice outlived the station'
echo 'ok nothing of it outlives the station, whichever way that ends'
