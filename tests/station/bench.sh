#!/bin/sh
# A stores bench by the command alone: what comes in, goes out, comes back and is counted; labels on what lies in the printer,
# of which no number is used up where they do not fit; and lists that are taken as files, whole or not at all.
#   bench.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
cat >"$data/station.ini" <<X
[site]
letters = BC
[room 1]
name = Theatre 1
[room 9]
name = Stores
kind = stores
[board]
start = no
X
cat >"$data/labels.ini" <<X
[medium small]
dpi = 203
label_mm = 30 x 15
[medium sheet]
dpi = 600
label_mm = 63 x 33
sheet_mm = 210 x 297
labels = 3 x 8
first_mm = 7.2 x 15.1
step_mm = 66.0 x 33.9
X
start
expect() { # EXIT WORDS COMMAND...
	code=$1 words=$2
	shift 2
	set +e
	"$@" >"$root/out" 2>&1
	is=$?
	set -e
	[ "$is" = "$code" ] || fail "exit $is instead of $code: $*: $(cat "$root/out")"
	grep -q -- "$words" "$root/out" || fail "not '$words': $*: $(cat "$root/out")"
	echo "ok $words"
}
events() { bt audit verify | sed 's/[^0-9]*\([0-9]*\).*/\1/'; }
list=$source/config/catalogue.csv

# A catalogue: looked at, taken, changed, and refused at its place.
expect 0 'line 2    added     GREEN-S: finger tourniquet, green, S' bt catalogue import --preview "$list"
expect 0 'read and none taken: 12 added, 0 changed' bt catalogue import --preview "$list"
[ "$(bt catalogue export | wc -l)" = 1 ] || fail 'a preview took a line'
expect 0 '12 lines taken into the catalogue: 12 added' bt catalogue import "$list"
sed 's/^NEEDLE,"needle"/NEEDLE,"needle, small"/; /^BLADE/d' "$list" >"$root/new.csv"
expect 0 "line 9    changed   NEEDLE: needle, small; name was 'needle', is 'needle, small'" bt catalogue import --preview "$root/new.csv"
expect 0 '1 lines of the catalogue are not in the file and stay' bt catalogue import "$root/new.csv"
expect 0 'removed   BLADE' bt catalogue import --preview --whole "$root/new.csv"
expect 0 '0 added, 0 changed, 11 as they were, 1 removed' bt catalogue import --whole "$root/new.csv"
bt catalogue export >"$root/export.csv"
expect 0 '0 added, 0 changed, 11 as they were, 0 removed' bt catalogue import --whole "$root/export.csv"
tr , ';' <"$list" >"$root/semicolons.csv"
expect 1 'semicolons.csv: line 1, column A: semicolons stand between the columns' bt catalogue import "$root/semicolons.csv"
sed 's/09506000134352/09506000134353/' "$list" >"$root/digit.csv"
expect 1 "digit.csv: line 3, column D (codes): '09506000134353': its check digit is wrong" bt catalogue import --preview "$root/digit.csv"
sed '/^SWAB/d' "$root/export.csv" | sed 's/^TRAY-HAND\(.*\)NEEDLE\*3/TRAY-HAND\1SWAB-5*3/' >"$root/tray.csv"
expect 1 "'TRAY-HAND' holds 'SWAB-5', which is not in this file" bt catalogue import --whole "$root/tray.csv"

# Staff: the list is the whole.
printf 'name,kind,number,registered\nSTORES-1,practitioner,,yes\nSTORES-2,practitioner,,no\nCHARGE-3,nurse-in-charge,,yes\n' >"$root/staff.csv"
expect 0 '3 people read and none taken: 3 added' bt staff import --preview "$root/staff.csv"
[ -z "$(bt staff list)" ] || fail 'a preview took people'
expect 0 '3 people taken: 3 added' bt staff import "$root/staff.csv"
bt staff export | grep -v CHARGE-3 >"$root/left.csv"
expect 0 'withdrawn 000003 CHARGE-3' bt staff import --preview "$root/left.csv"
expect 0 '2 people taken: 0 added, 0 changed, 0 come back, 2 as they were, 1 withdrawn' bt staff import "$root/left.csv"
bt staff list | grep -q 'CHARGE-3 .*withdrawn' || fail 'who left is not withdrawn'

# The bench.
expect 0 'Received: 40 packs of finger tourniquet, green, M, lot T26' bt stock receive GREEN-M --lot T26 --expiry 2033-03-31 --packs 40 --by 1 --and 2
expect 3 "a second person's badge confirms it" bt stock receive GREEN-M --lot T27 --expiry 2033-03-31 --packs 2 --by 1 --and 1
expect 3 'nothing was received' bt stock receive GREEN-M --lot T27 --expiry 2033-03-31 --packs 2 --by 1 --and 1
expect 3 'Badge 99 is not known' bt stock receive GREEN-M --lot T27 --expiry 2033-03-31 --packs 2 --by 99 --and 2
expect 3 'Badge 3 was withdrawn' bt stock receive GREEN-M --lot T27 --expiry 2033-03-31 --packs 2 --by 1 --and 3
expect 3 'leave out --and' bt stock receive --code '(01)09506000134352(17)330331(10)T26' --packs 4 --by 1 --and 2
# Whoever worked at the bench before is not whoever typed this.
expect 0 'Received: 2 packs' bt stock receive GREEN-M --lot T28 --expiry 2033-03-31 --packs 2 --by 2 --and 1
[ -z "$(bt stock list GREEN-M --lot T27 --json | tr -d '[]\n')" ] || fail 'what was refused was received'
# Nobody said that the pack has no lot or expiry; what its code says is not said otherwise.
expect 4 'Its code says no lot' bt stock receive GREEN-M --packs 3 --by 1 --and 2
expect 4 'Its code says no expiry' bt stock receive GREEN-M --lot T29 --packs 3 --by 1 --and 2
expect 4 'nothing was received' bt stock receive GREEN-M --lot T29 --packs 3 --by 1 --and 2
expect 3 'its code says lot T29, expiry 2033-03-31, and lot Z9, expiry 2032-12-01 is given' bt stock receive --code '(01)09506000134352(17)330331(10)T29' --packs 4 --lot Z9 --expiry 2032-12-01
expect 2 'or --code, which says them itself' bt stock count --code '(01)09506000134352(17)330331(10)T29' --lot Z9 --packs 4
[ "$(bt stock list --lot T29 --json)$(bt stock list --lot Z9 --json)" = '[][]' ] || fail 'what was asked or refused was received'
expect 0 'Received: 1 pack of needle, small, no lot and no expiry' bt stock receive NEEDLE --lot none --expiry none --packs 1 --by 1 --and 2
bt stock list --lot T28 | awk 'NR > 1 { print $1, $2 }' >"$root/of-lot"
[ "$(cat "$root/of-lot")" = 'GREEN-M T28' ] || fail "a lot without its line lists: $(cat "$root/of-lot")"
expect 3 '"verdict":"refused"' bt stock issue --room 1 FORCEPS --packs 2 --json
expect 4 '"verdict":"question"' bt stock receive GREEN-M --packs 3 --by 1 --and 2 --json
expect 0 'Received: 4 packs' bt stock receive --code '(01)09506000134352(17)330331(10)T26' --packs 4
expect 4 'left, since nothing answers this: .*10000' bt stock receive --code '(01)09506000134352(17)330331(10)T26' --packs 10000
expect 0 'Received and not confirmed: 2 packs' bt stock receive GREEN-L --lot L1 --expiry 2033-03-31 --packs 2 --by 1
expect 3 'is issued by its labels' bt stock issue --room 1 GREEN-L --lot L1
expect 0 'Confirmed by STORES-2' bt stock confirm GREEN-L --lot L1 --and 2
expect 0 'Received: 6 packs' bt stock receive SWAB-5 --lot S1 --expiry 2033-03-31 --packs 6 --by 1 --and 2
expect 0 'Issued to Theatre 1: 1 pack of swab, small, lot S1' bt stock issue --room 1 SWAB-5 --packs 3
expect 2 'sealed yes or no' bt stock return SWAB-5 --room 1
expect 0 'On the shelf again: swab, small' bt stock return SWAB-5 --room 1 --sealed yes
expect 0 'Written off, not sealed, dry and clean: swab, small' bt stock return SWAB-5 --room 1 --sealed no
expect 0 'Counted 3 of swab, small, lot S1.*by the record 4' bt stock count SWAB-5 --packs 3
expect 0 'torn pouch' bt stock write-off SWAB-5 --packs 1 --why 'torn pouch'
bt stock list SWAB-5 --json >"$root/swabs"
for fact in '"shelf":2' '"received":6' '"unaccounted":1' '"written_off":2'; do
	grep -q "$fact" "$root/swabs" || fail "the stock does not say $fact: $(cat "$root/swabs")"
done
echo 'ok the stock is what was done'

# One lot with two expiries, of which one was typed wrongly.
expect 0 'Received: 5 packs' bt stock receive SWAB-5 --lot S1 --expiry 2033-03-30 --packs 5 --by 1 --and 2
expect 3 'here: --expiry, with that day or none' bt stock count SWAB-5 --lot S1 --packs 5
expect 2 "--expiry is '30.3.2033': it must be a day as in 2028-03-31, or none" bt stock count SWAB-5 --lot S1 --expiry 30.3.2033 --packs 5
expect 0 'Counted 5 of swab, small, lot S1, expiry 30 Mar 2033' bt stock count SWAB-5 --lot S1 --expiry 2033-03-30 --packs 5
expect 0 'Issued to Theatre 1: 1 pack of swab, small, lot S1, expiry 30 Mar 2033' bt stock issue SWAB-5 --lot S1 --expiry 2033-03-30 --room 1
expect 0 'On the shelf again' bt stock return SWAB-5 --lot S1 --expiry 2033-03-30 --room 1 --sealed yes
expect 0 'Written off: 5 packs' bt stock write-off SWAB-5 --lot S1 --expiry 2033-03-30 --packs 5 --why 'expiry typed wrongly'
expect 0 'Counted 2 of swab, small, lot S1, expiry 31 Mar 2033' bt stock count SWAB-5 --lot S1 --packs 2

# A line leaves the catalogue, and what is left of it stays to be found and removed, and is not offered for use.
bt catalogue export >"$root/before.csv"
grep -v '^SWAB-5' "$root/before.csv" >"$root/without.csv"
expect 0 'SWAB-5 is not in the file, and packs of it lie in stores or rooms (3)' bt catalogue import --preview --whole "$root/without.csv"
expect 0 'SWAB-5 is not in the file, and packs of it lie in stores or rooms (3)' bt catalogue import --whole "$root/without.csv"
! bt stock earliest | grep -q SWAB-5 || fail 'packs without a line are offered for use'
expect 0 'SWAB-5 .*S1 .*no-line' bt stock list SWAB-5
expect 0 'SWAB-5 .*S1 .*no-line' bt stock recall SWAB-5 --lot S1
expect 0 'in quarantine: SWAB-5, lot S1' bt stock quarantine SWAB-5 --lot S1 --why 'recalled by the maker'
expect 0 'released: SWAB-5, lot S1' bt stock release SWAB-5 --lot S1 --by 1 --and 2
expect 3 'its line is not in the catalogue any more' bt stock issue SWAB-5 --room 1
expect 3 "The catalogue has no line 'SWAB-5'" bt stock receive SWAB-5 --lot S1 --expiry 2033-03-31 --packs 1 --by 1 --and 2
expect 0 'Counted 2 of SWAB-5, lot S1' bt stock count SWAB-5 --packs 2
expect 0 'Written off: 1 pack of SWAB-5' bt stock write-off SWAB-5 --packs 1 --why 'line given up'
expect 1 "'SWAB-6' is not in the catalogue, and stores have nothing of it" bt stock list SWAB-6
bt catalogue import "$root/before.csv" >/dev/null

# Labels: what does not fit uses up no number; a line of which nothing says where the label goes has none.
before=$(events)
expect 1 'modules of 0.375 mm.*use labels of at least [0-9]* x [0-9]* mm' bt label pack --line GREEN-M --lot T26 --count 2 --media small --pdf "$root/small.pdf"
expect 1 'no .medium large.' bt label pack --line GREEN-M --lot T26 --count 2 --media large --pdf "$root/large.pdf"
expect 1 "does not say where the label of this line goes" bt label pack --line SWAB-5 --lot S1 --count 1 --pdf "$root/swab.pdf"
[ "$(events)" = "$before" ] || fail 'labels that cannot be printed were numbered'
expect 0 'item numbers 00000001 to 00000030; on the pack: film side' bt label pack --line GREEN-M --lot T26 --count 30 --media sheet --pdf "$root/sheet.pdf"
[ "$(pdfinfo "$root/sheet.pdf" | awk '/^Pages/ { print $2 }')" = 3 ] || fail '60 labels do not lie on three sheets of 24'
expect 0 'labels 00000029 to 00000030. Open: 28.' bt stock spoilt --labels 29-30
expect 3 'Label 00000001 was not read back' bt stock issue --room 1 --labels 1-2
printf '[medium small]\ndpi = 204\nlabel_mm = 30 x 15\n' >"$data/labels.ini"
expect 1 "labels.ini line 2: dpi is '204': it must be 203, 300 or 600" bt label pack --line GREEN-M --lot T26 --count 1 --media small --pdf "$root/small.pdf"
stop
