#!/bin/sh
# Every number that comes in is looked at where it comes in: the command's, the socket's, a program's of the station and
# a file's. What cannot be is said by name, and the station starts again on its record.
#   edges.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
# expect CODE WORDS COMMAND…: the exit code, and words that the answer must hold
expect() {
	code=$1 words=$2
	shift 2
	got=0
	"$@" >"$root/out" 2>&1 || got=$?
	[ "$got" = "$code" ] || fail "exit $got instead of $code: $*: $(cat "$root/out")"
	grep -q -- "$words" "$root/out" || fail "no '$words' in: $(cat "$root/out")"
	echo "ok $words"
}
# The answer to one request at the socket, whatever program makes it.
ask() {
	python3 -c 'import socket, sys
s = socket.socket(socket.AF_UNIX); s.settimeout(20); s.connect(sys.argv[1]); s.sendall(sys.argv[2].encode() + b"\n")
print(s.makefile().readline())' "$data/socket" "$1"
}
command -v python3 >/dev/null || skip 'python3 is not installed'
start
bt catalogue import "$source/tests/replay/catalogue.csv" >/dev/null

expect 2 "--room is 'two'" bt scan --room two BTBC10100171
expect 2 "--room is '-1'" bt scan --room -1 BTBC10100171
expect 2 "--room is '0'" bt scan --room 0 A
expect 2 "--room is '1x'" bt sheet --room 1x
expect 2 'CODE is missing' bt scan
expect 2 "'B' is a word too many" bt scan A B
expect 2 "CASE is 'x'" bt case show x
expect 2 'CASE.* is missing' bt case show
expect 2 "NUMBER is '-3'" bt staff withdraw -3
expect 2 "--number is '1000000'" bt staff add --number 1000000 surgeon SURG-1
expect 0 'badge 000007: SURG-7' bt staff add --number 7 surgeon SURG-7
expect 1 'badge 000007 was given to SURG-7: leave --number out' bt staff add --number 7 surgeon SURG-8
bt staff withdraw 7 >/dev/null
expect 1 'badge 000007 was given to SURG-7' bt staff add --number 7 surgeon SURG-8
expect 0 'badge 000007: SURG-7' bt staff add --number 7 surgeon SURG-7
trace() { bt audit trace --badge "$1" --why 'a card was lost' --summary none --csv; }
expect 0 'badge 000008: SURG-8' bt staff add surgeon SURG-8
expect 0 'This badge was not withdrawn' trace 8
expect 0 'The record has no badge of this number' trace 9
expect 0 "badge 999999: SURG-9" bt staff add --number 999999 surgeon SURG-9
expect 0 "badge 000001: SURG-10" bt staff add surgeon SURG-10
expect 2 "'nurse' is no kind of badge" bt staff add nurse N-1
expect 2 'NAME is missing' bt staff add surgeon
expect 2 'is missing' bt stock quarantine GREEN-M
expect 2 "SLIP is '0'" bt print retry 0
expect 2 "--expiry is '2028-02-30'" bt label pack --line GREEN-M --count 1 --expiry 2028-02-30 --pdf "$root/x.pdf"
expect 2 "--count is 'many'" bt label pack --line GREEN-M --count many --pdf "$root/x.pdf"
expect 2 "--room is 'x'" bt label cards --room x --list
expect 2 'DIR.* is missing' "$bin/bandtally" --data
expect 2 'DIR.* is missing' "$bin/bandtally" --data= status
expect 2 'COMMAND is missing' "$bin/bandtally"
expect 2 "'x' is a word too many" bt status x
expect 2 "--packs does not belong to 'return'" bt stock return GREEN-M --room 1 --sealed yes --packs 3
expect 2 "--room does not belong to 'count'" bt stock count GREEN-M --packs 3 --room 1
expect 2 "--lot does not belong to 'shortfalls'" bt stock shortfalls --lot T26
expect 2 "--number does not belong to 'list'" bt staff list --number 3
expect 2 "--whole does not belong to 'check'" bt catalogue check --whole "$source/tests/replay/catalogue.csv"
expect 2 "--lot does not belong to 'cards'" bt label cards --lot T26 --list
expect 2 "--list does not belong to 'pack'" bt label pack --line GREEN-M --count 1 --list
expect 2 "--room does not belong to 'badges'" bt label badges --room 1 --list
expect 2 "--slips does not belong to 'slip'" bt audit slip TEXT --slips "$root/none"
expect 2 '--lot is given twice' bt stock list GREEN-M --lot T26 --lot T27
expect 2 "'lists' is a word too many" bt stock lists
expect 2 "'x' is a word too many" bt stock print-again x
expect 2 "'GREEN-M' is a word too many" bt stock issue GREEN-M --room 1 --labels 41
for deed in "receive GREEN-M" "issue --room 1 GREEN-M" "write-off GREEN-M --why wet"; do
	# shellcheck disable=SC2086
	expect 2 "--packs is '0': it must be a whole number from 1" bt stock $deed --packs 0
done
expect 2 "'x' is a word too many" "$bin/bandtallyd" --messages x
expect 2 'stand alone' "$bin/bandtallyd" --messages --check
expect 2 "--month is '2026-13': it must be a month" bt audit report --month 2026-13 --json
expect 2 "--quarter is '2026-5': it must be a quarter" bt audit report --quarter 2026-5 --json
expect 2 "--from is '2026-02-30': it must be a day" bt audit report --from 2026-02-30 --to 2026-03-01 --json
expect 2 "--to is '2026-03-01': it must be no earlier" bt audit report --from 2026-03-02 --to 2026-03-01 --json
expect 2 'give the days: one of' bt audit report --to 2026-03-01 --json
expect 2 'give the days: one of' bt audit report --month 2026-03 --year 2026 --json
expect 2 'give one of --json' bt audit report --month 2026-03
expect 2 'leave one out' bt audit report --month 2026-03 --json --central "$root" --room 1
expect 2 'whole seconds, 0 to 86400' "$bin/bandtally-print" --wait 4294967297 --check

expect 0 "'room' must be a whole number from 1 to 99" ask '{"code":"A","do":"scan","room":-5}'
expect 0 "'room' must be" ask '{"code":"A","do":"scan","room":99999999999}'
expect 0 "'room' must be" ask '{"code":"A","do":"scan","room":"1"}'
expect 0 "'room' must be" ask '{"do":"type","room":-5,"text":"INC-1"}'
expect 0 "'room' must be" ask '{"do":"sheet","room":4294967297}'
expect 0 "'scanner' is longer than" ask "{\"code\":\"A\",\"do\":\"scan\",\"scanner\":\"$(printf %040d 7)\"}"
expect 0 "'expiry' must be" ask '{"count":1,"do":"label","expiry":-7,"line":"GREEN-M"}'
expect 0 "'expiry' must be" ask '{"count":1,"do":"label","expiry":99999999999,"line":"GREEN-M"}'
expect 0 "'expiry' is no day" ask '{"count":1,"do":"label","expiry":20280230,"line":"GREEN-M"}'
expect 0 "'count' must be" ask '{"count":4294967297,"do":"label","line":"GREEN-M"}'
expect 0 "'kind' must be" ask '{"do":"staff","kind":258,"name":"X"}'
expect 0 "'number' must be" ask '{"do":"withdraw","number":4294967297}'
expect 0 "'case' must be" ask '{"case":4294967297,"do":"case"}'
expect 0 "'slip' must be" ask '{"do":"retry","slip":-1}'
expect 0 "'lot' has 31 bytes: it must have 1 to 30 bytes" ask "{\"do\":\"quarantine\",\"line\":\"GREEN-M\",\"lot\":\"$(printf %031d 7)\",\"why\":\"x\"}"
expect 0 'numbered without a gap' bt audit verify

# A store renames a line: its key stays; a code moves with both lines in one file.
gtin=09506000134352
printf 'key,name,role,codes,marked,visible\nBAND-M,"finger tourniquet, blue, M",tourniquet,%s,yes,yes\n' $gtin >"$root/other.csv"
expect 1 "line 2, column D (codes): the code '$gtin' of 'BAND-M' finds the line 'GREEN-M'.*keep its key" bt catalogue import "$root/other.csv"
{
	printf 'key,name,role,codes,marked,visible\nBAND-M,"finger tourniquet,\nblue, M",tourniquet,%s,yes,yes\n' $gtin
	printf 'GREEN-M,"finger tourniquet, old",tourniquet,,yes,yes\nX,x,nothing,,no,no\n'
} >"$root/lines.csv"
expect 1 'line 2, column B (name) holds U+000A, a line break' bt catalogue import "$root/lines.csv"
printf 'key,name,role,codes,marked,visible\nBAND-M,"finger tourniquet, blue, M",tourniquet,%s,yes,yes\nGREEN-M,"finger tourniquet, old",tourniquet,,yes,yes\n' \
	$gtin >"$root/moved.csv"
expect 0 '2 lines taken' bt catalogue import "$root/moved.csv"
bt catalogue export | grep -q "^BAND-M.*$gtin" || fail "the code did not move"
printf 'key,name,role,contents\nT,tray,tray,A*2 A*3\n' >"$root/tray.csv"
expect 1 'line 2, column D (contents)' bt catalogue import "$root/tray.csv"
for lines in 'T,tray,tray,NOPE*2' 'T,tray,tray,T*2' 'A/B,thing,other,' 'A*B,thing,other,' 'A B,thing,other,'; do # one place decides
	printf 'key,name,role,contents\n%s\n' "$lines" >"$root/tray.csv"
	expect 1 'tray.csv: line 2' bt catalogue check "$root/tray.csv"
	cp "$root/out" "$root/checked"
	expect 1 'tray.csv: line 2' bt catalogue import "$root/tray.csv"
	cmp "$root/checked" "$root/out" || fail "check and import say other things of $lines"
done
printf 'key,name,role,contents\nT,tray,tray,GREEN-M*2\n' >"$root/tray.csv"
expect 0 "'T' holds what is in the station's catalogue.*--whole' refuses it" bt catalogue check "$root/tray.csv"
expect 1 "'T' holds 'GREEN-M', which is not in this file" bt catalogue import --whole --preview "$root/tray.csv"
expect 0 '1 lines read' bt catalogue import --preview "$root/tray.csv"
for word in $(bt catalogue --help | tr '\n' ' ' | sed 's/.*role: \(.*\);.*identity: \(.*\); yes or no.*/\1 \2/'); do
	sed 's/^\.[A-Z]* //' "$source/config/man/bandtally-catalogue.5" | sed -n '/^role$/,/^rolls_on$/p' | grep -qw "$word" || fail "the manual does not name $word"
done

# Who names the wrong file loses nothing: it may be the only copy.
echo "a letter" >"$data/letter"
for file in station.key record.db letter; do
	cp "$data/$file" "$root/was"
	expect 1 'something else stands there' bt label cards --pdf "$data/$file"
	bt audit report --year 2026 --json --summary "$data/$file" >/dev/null 2>"$root/out" || fail "no report: $(cat "$root/out")"
	grep -q 'something else stands there' "$root/out" || fail "the summary: $(cat "$root/out")"
	expect 1 'something else stands there' bt audit report --year 2026 --page "$data/$file"
	cmp -s "$data/$file" "$root/was" || fail "$file was written over"
done
bt label cards --pdf "$root/cards.pdf" || fail 'no cards'
bt label cards --pdf "$root/cards.pdf" || fail 'no cards'
expect 1 'is no folder' bt audit report --year 2026 --svg "$root/none"
expect 1 'this record has no room 77, and no case of one; its rooms: 1 ' bt audit report --year 2026 --csv --room 77
expect 0 'no picture was written' bt audit report --year 2026 --svg "$root"
# Numbers that could not be printed are not used up.
printf 'key,name,role,codes,marked,visible,label,label_place\nLABELLED-M,"finger tourniquet, labelled",tourniquet,,yes,yes,after,film side\n' >"$root/labelled.csv"
bt catalogue import "$root/labelled.csv" >/dev/null
expect 1 'cannot be written' bt label pack --line LABELLED-M --lot T26 --expiry 2031-03-31 --count 3 --pdf "$root/none/x.pdf"
expect 0 'item numbers 00000001' bt label pack --line LABELLED-M --lot T26 --expiry 2031-03-31 --count 3 --pdf "$root/x.pdf"

stop
start
expect 0 'numbered without a gap' bt audit verify
stop
