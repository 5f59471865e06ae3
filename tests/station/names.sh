#!/bin/sh
# What people give as a name is refused at each entry, in one sentence, where it holds what cannot be read or turns the text;
# and what stands in a document all the same is printed with a mark in its place.
#   names.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
# refused CODE SENTENCE COMMAND…: the exit code, and the whole of the answer
refused() {
	code=$1 sentence=$2 got=0
	shift 2
	"$@" >"$root/out" 2>&1 || got=$?
	[ "$got" = "$code" ] || fail "exit $got instead of $code: $*: $(cat "$root/out")"
	[ "$(wc -l <"$root/out")" = 1 ] || fail "more than one line: $(cat "$root/out")"
	grep -qF -- "$sentence" "$root/out" || fail "not '$sentence': $(cat "$root/out")"
	echo "ok $sentence"
}
turn=$(printf '\342\200\256') mark=$(printf '\342\200\216')
cat >"$data/station.ini" <<X
[site]
letters = BC
[board]
start = no
X
start
head='key,name,role,codes,marked,visible,single_use,instead'
line='GREEN-M,"finger tourniquet, green, M",tourniquet,09506000134352,yes,yes,yes,'
printf '%s\n%s\nX,"band\n %s",other,09506000134369,no,no,no,\n' "$head" "$line" "green" >"$root/break.csv"
refused 1 'break.csv: line 3, column B (name) holds U+000A, a line break, as its character 5: leave it out' \
	bt catalogue import "$root/break.csv"
printf '%s\n%s\nX,glove,refused,,no,no,no,band %sevil\n' "$head" "$line" "$turn" >"$root/turn.csv"
refused 1 'turn.csv: line 3, column H (instead) holds U+202E, which turns the direction of text, as its character 6: leave it out' \
	bt catalogue check "$root/turn.csv"
printf '%s\n%s\nX,bande \351troite,other,,no,no,no,\n' "$head" "$line" >"$root/latin.csv"
refused 1 'latin.csv: line 3, column B (name): its character 7 is no UTF-8, so the file was saved in another code page: save it as CSV in UTF-8, with commas between the columns' \
	bt catalogue import "$root/latin.csv"
printf '%s\n%s\n' "key,name$mark,role" "$line" >"$root/head.csv"
refused 1 'head.csv: line 1, column B: its name holds U+200E' bt catalogue import "$root/head.csv"
printf 'k\0e\0y\0,\0' >"$root/wide.csv"
refused 1 'wide.csv: line 1, column A: it holds a byte of zero: save it as CSV in UTF-8, with commas between the columns' bt catalogue import "$root/wide.csv"
[ "$(bt catalogue export | wc -l)" = 1 ] || fail 'a line of a refused file was taken'
printf '%s\n%s\n' "$head" "$line" >"$root/good.csv"
bt catalogue import "$root/good.csv" >/dev/null

refused 1 'the badge was not added: its name or role code holds U+200E, which turns the direction of text, as its character 8: leave it out' \
	bt staff add practitioner "Nurse A$mark"
refused 1 'the badge was not added: its name or role code has 33 bytes: it must have 1 to 32 bytes: shorten it' \
	bt staff add practitioner 'A name of thirty-three bytes, no.'
[ -z "$(bt staff list)" ] || fail 'a refused badge was added'
refused 1 "'why' holds U+000A, a line break, as its character 9: leave it out" \
	bt stock quarantine GREEN-M --lot T26 --why "recalled
by the maker"
refused 1 "'lot' holds U+202E" bt stock quarantine GREEN-M --lot "T$turn" --why 'recalled by the maker'
refused 1 "'lot' holds U+202E" bt label pack --line GREEN-M --lot "T$turn" --count 1 --pdf "$root/x.pdf"
bt staff add practitioner STORES-1 >/dev/null
bt staff add practitioner STORES-2 >/dev/null
# What was let in before must find its way out: its name is no reason, but none of that name is in quarantine.
refused 1 'is not in quarantine' bt stock release GREEN-M --lot "T$turn" --by 1 --and 2
[ ! -e "$root/x.pdf" ] || fail 'a label was printed'
stop

printf '[room 1]\nname = Theatre %s2\n' "$turn" >"$data/station.ini"
refused 1 'station.ini line 2: name holds U+202E, which turns the direction of text, as its character 9: leave it out' \
	"$bin/bandtallyd" --data "$data" --check

sed "s/\"room\": *\"[^\"]*\"/\"room\": \"Theatre $turn\"/" "$source/labels/samples/slip-a5.json" >"$root/slip.json"
grep -q "$turn" "$root/slip.json" || fail 'the sample has no room'
"$bin/bandtally-print" --pdf "$root/slip.pdf" <"$root/slip.json" || fail 'a slip was kept back for the name of a room'
[ -s "$root/slip.pdf" ] || fail 'nothing was printed'
echo 'ok a slip is printed whatever a name holds'
