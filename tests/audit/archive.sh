#!/bin/sh
# What was archived leaves the record: by the command, on a record that a station wrote on and goes on with.
#   archive.sh BUILD-FOLDER
set -eu
build=$1 cases=40 steps=0 days=1500
. "$(dirname "$0")/common"
asked() { sqlite3 "$root/data/record.db" "$1"; }
cat >"$root/data/station.ini" <<'INI'
[site]
letters = BC
[room 1]
name = Theatre 1
[room 2]
name = Theatre 2
[board]
start = no
INI
daemon=
trap '[ -z "$daemon" ] || kill "$daemon" 2>/dev/null || true; rm -rf "$root"' EXIT
start() {
	"$bin/bandtallyd" --data "$root/data" 2>>"$root/log" &
	daemon=$!
	tries=400
	until bt status >/dev/null 2>&1; do
		[ $((tries -= 1)) -gt 0 ] || fail "the station does not start: $(cat "$root/log")"
		sleep 0.05
	done
}
end() {
	kill "$daemon"
	wait "$daemon" || true
	daemon=
}
start
says 'a case can be kept for something' 'case 3 stays' bt audit keep 3 --for 'claim 2026-7'
refuses 'not one that never was' 1 'no case 999' bt audit keep 999 --for 'claim'
refuses 'nor for nothing' 2 'one of --for' bt audit keep 3
says 'two were kept' 'case 4 stays' bt audit keep 4 --for 'inquest'
says 'of one that is over' 'case 4 may leave' bt audit keep 4 --over 'closed 2026-11'
end
mkdir "$root/shelf"
refuses 'without a period in the policy everything stays' 1 'keep_years' bt audit archive --no-slips "$root/shelf"
printf '[record]\nkeep_years = 3\n' >"$root/data/policy.ini"
start
says 'what would leave is told while the station works' 'may leave' bt audit archive --check
refuses 'but nothing leaves while it does' 1 'another bandtallyd works' bt audit archive --no-slips "$root/shelf"
end
[ -z "$(ls "$root/shelf")" ] || fail 'something was written all the same'
sqlite3 "$root/data/record.db" "SELECT seq, hex(hash), payload FROM event ORDER BY seq" >"$root/all"

slips=--no-slips
command -v gs >/dev/null && slips=
day=$(date +%F)
today=$root/shelf/archive-$day
mkdir "$today-certificate.json" # where a file should be written
refuses 'where the certificate finds no room that is said, and how to go on' 1 'give the same command again' bt audit archive --no-slips "$root/shelf"
grep -q 'do, with' "$root/out" || fail 'nothing left'
rmdir "$today-certificate.json"
left_once=$(asked 'SELECT count(*) FROM left_case')
mkdir "$today-certificate.pdf"
refuses 'and once more' 1 'give the same command again' bt audit archive --no-slips "$root/shelf"
rmdir "$today-certificate.pdf"
start # and has gone on since
says 'another case is kept since' 'case 6 stays' bt audit keep 6 --for 'claim 2026-8'
end
# shellcheck disable=SC2086
says 'the same command makes it, and what else lies beside the archive' 'nothing further leaves' bt audit archive $slips "$root/shelf"
[ "$(asked 'SELECT count(*) FROM left_case')" = "$left_once" ] || fail 'further cases left'
[ -f "$today-certificate.json" ] && [ -f "$today-certificate.pdf" ] || fail 'there is no certificate'
archive=$(ls "$root"/shelf/archive-*.db)
# shellcheck disable=SC2086
says 'then it has nothing left to do' ' 0 do, with' bt audit archive $slips "$root/shelf"
[ "$(ls "$root"/shelf/archive-*.db)" = "$archive" ] || fail 'there is a second archive'
left=$(asked 'SELECT count(*) FROM left_case')
stay=$(asked 'SELECT group_concat(case_no) FROM (SELECT DISTINCT case_no FROM event WHERE case_no > 0 AND case_no NOT IN (SELECT case_no FROM left_case) ORDER BY 1)')
# of every fifth case the slip was not seen, and case 3 is kept
[ "$stay" = 1,3,6,11,16,21,26,31,36 ] || fail "these stayed: $stay"
ok 'cases with a slip that was not seen, and the one that is kept for a claim, stay'
says 'the archive is whole' 'numbered' bt audit verify --file "$archive" --each-seal --indexes
says 'and so is the record that goes on' 'numbered' bt audit verify --each-seal --indexes
sqlite3 "$archive" "SELECT seq, hex(hash), payload FROM event ORDER BY seq" >"$root/archived"
head -n "$(wc -l <"$root/all")" "$root/archived" | cmp -s - "$root/all" || fail 'the archive is not what the record was'
ok 'the archive has all that there was, letter for letter'
asked "SELECT seq, hex(hash), payload FROM event WHERE seq <= $(tail -n 1 "$root/archived" | cut -d '|' -f 1) ORDER BY seq" >"$root/stays"
[ "$(comm -23 "$root/stays" "$root/archived" 2>/dev/null | wc -l)" = 0 ] || fail 'something in the record is otherwise than in the archive'
[ "$(stat -c %s "$root/data/record.db")" -lt "$(stat -c %s "$archive")" ] || fail 'it is not smaller'
ok 'what stays is as it was, and the file is smaller'
for names in joined digit-on item-in count-agreed; do
	[ "$(asked "SELECT count(*) FROM event WHERE kind = '$names' AND case_no IN (SELECT case_no FROM left_case)")" = 0 ] ||
		fail "$names of a case that left is still there"
done
ok 'of a case that left nobody and no digit is there'
grep -q 'Certificate' "$root/shelf/"*-certificate.json || fail 'no certificate'
grep -q '"name":"cases","rows":\[{"cells":\["2",' "$root/shelf/"*-certificate.json || fail "the certificate does not name the cases: $(cat "$root/shelf/"*-certificate.json)"
! grep -q 'has left' "$root/shelf/"*-certificate.json || fail 'what left with this archive is said to have left before'
pdftotext -layout "$root/shelf/"*-certificate.pdf - | grep -q "Cases that left *$left" || fail 'the certificate counts otherwise'
ok 'the certificate says how many'

# It goes on.
cp "$root/data/record.db" "$root/just-archived.db"
start
says 'the station goes on with it' '' bt status
bt case show 2 --json >"$root/out" || fail 'a case that left is not told'
grep -q 'archive-.*\.db' "$root/out" || fail "what is shown of a case that left does not say where the rest is: $(cat "$root/out")"
! grep -q 'Nothing was counted in' "$root/out" || fail 'a case that left is told as one in which nothing happened'
ok 'of a case that left it says where what was counted stands'
refuses 'it cannot be kept any longer' 1 'has left the record' bt audit keep 2 --for 'claim'
end
says 'and proves itself' 'numbered' bt audit verify --each-seal --indexes
[ "$(asked "SELECT count(*) FROM event WHERE kind = 'incarnation'")" = "$(grep -c '"kind":"incarnation"' "$root/all")" ] ||
	fail 'the station took it for another record'
ok 'it is no other record to the station'
says 'a report says that cases left' 'cases left the record' bt audit report --summary none --year "$(date +%Y)" --json
says 'one of them is told with what stayed' 'left the record' bt audit case 2 --json
says 'and whole from the archive' 'digit-on' bt audit case 2 --json --file "$archive"
says 'of a case that stayed everything is there' 'digit-on' bt audit case 3 --json
says 'a trace says that cases left' 'cases left the record' bt audit trace --summary none --lot NONE --json

# What was kept for something and is over leaves later, even on the same day.
find "$root/shelf" -type f -exec sha256sum {} + >"$root/shelf-before"
start
says 'the claim is over' 'case 3 may leave' bt audit keep 3 --over 'settled 2026-11'
end
# shellcheck disable=SC2086
says 'and then that case leaves' ' 1 do, with' bt audit archive $slips "$root/shelf"
[ -f "$today-2.db" ] && [ -f "$today-2-certificate.pdf" ] || fail "the second archive of a day has no name of its own: $(ls "$root/shelf")"
sha256sum --quiet -c "$root/shelf-before" || fail 'a later archive wrote over what lay there'
ok 'beside what lies there already'
says 'the record still proves itself' 'numbered' bt audit verify --each-seal --indexes

# Somebody helps along.
while read -r harm; do
	cp "$root/just-archived.db" "$root/harmed.db"
	sqlite3 "$root/harmed.db" "DROP TRIGGER gone_no_UPDATE; DROP TRIGGER left_case_no_DELETE; DROP TRIGGER event_no_delete; $harm"
	bt audit verify --file "$root/harmed.db" >"$root/out" 2>"$root/err" && fail "not found: $harm"
	grep -qE 'what left the record|does not follow|its hash' "$root/out" "$root/err" || fail "only the triggers were missed: $harm"
	ok "found: $harm"
done <<'HARM'
DELETE FROM left_case WHERE case_no = 2
UPDATE gone SET last = last - 1 WHERE first = (SELECT min(first) FROM gone)
DELETE FROM event WHERE seq = (SELECT max(last) + 1 FROM gone)
UPDATE gone SET before = zeroblob(32)
HARM

# Slips as PDF/A, where there is something to make them.
[ -z "$slips" ] || {
	echo 'skipped: no ghostscript, so no slip was archived'
	exit 0
}
pdftotext "$(ls "$root"/shelf/slips-*.pdf | head -n 1)" "$root/text"
grep -qi 'finger' "$root/text" || fail 'the text of archived slips is no text'
ok 'slips are there, a file a month, and can be searched'
jars=${BANDTALLY_JARS:-/usr/share/java}
[ -e "$jars/preflight.jar" ] || {
	echo 'skipped: no PDFBox preflight (libpdfbox2-java), so nobody else said that they are PDF/A-1b'
	exit 0
}
path=
for jar in preflight xmpbox pdfbox2 fontbox2 commons-logging commons-io javax.activation jaxb-api; do path=$path:$jars/$jar.jar; done
for file in "$root"/shelf/slips-*.pdf; do
	java -cp "$path" org.apache.pdfbox.preflight.Validator_A1b "$file" >"$root/out" 2>&1 || fail "$file: $(tail -n 5 "$root/out")"
	grep -q 'is a valid PDF/A-1b file' "$root/out" || fail "$file: $(tail -n 5 "$root/out")"
done
ok 'a validator of another house says: valid PDF/A-1b'
