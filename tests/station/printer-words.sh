#!/bin/sh
# Why a paper does not come stands on the line of the printer's program by its name, and on each room's board in its language; what
# the station does not know by a general word; and the program's own English on no board.
#   printer-words.sh FOLDER-OF-PROGRAMS
set -eu
real=$1
bin=
. "$(dirname "$0")/common"
bin=$root/bin
mkdir "$bin"
cp "$real/bandtallyd" "$real/bandtally" "$bin"
mkfifo "$root/say"
# In the place of bandtally-print: says what is written to $root/say. In that of bandtally-board: notes what it is shown.
printf '#!/bin/sh\ncat >/dev/null &\nexec cat <>"%s"\n' "$root/say" >"$bin/bandtally-print"
printf '#!/bin/sh\nexec cat >>"%s"\n' "$root/shown" >"$bin/bandtally-board"
chmod +x "$bin/bandtally-print" "$bin/bandtally-board"
: >"$root/shown"
exec 8<>"$root/say"
printf '[site]\nletters = BC\n[room 1]\nname = Saal 1\nlanguage = de\n[room 2]\nname = Theatre 2\n[board]\nstart = yes\n' >"$data/station.ini"
start
bt catalogue import "$source/config/catalogue.csv" >/dev/null
bt staff add --registered --number 1 practitioner SCRUB-1 >/dev/null
bt staff add --registered --number 2 practitioner CIRC-2 >/dev/null
card() { # ROOM NAME: it stands in the same row of each room's list, whatever it is called there
	row=$(bt label cards --room 2 --list | awk -F '\t' -v m="$2" '$3 == m { print NR; exit }')
	bt label cards --room "$1" --list | sed -n "${row}p" | cut -f 1
}
badge() { bt label badges --list | awk -F '\t' -v m="$1" '$3 == m { print $1 }'; }
scan() { bt scan --room "$1" "$2" >>"$root/log" || [ $? = 4 ] || fail "refused: $2"; }
for room in 1 2; do
	scan $room "$(card $room 'NEW CASE')"
	scan $room "$(badge SCRUB-1)"
	scan $room "$(badge CIRC-2)"
	scan $room "(01)09506000134352(17)330331(10)T26(21)S$room"
	scan $room "$(badge CIRC-2)"
	scan $room "$(card $room 'FINAL COUNT')"
	scan $room "$(card $room NO)"
done
say() { printf '{"v":1,"job":{"id":%s01,"state":"waiting","cups":7,"pages":1,"text":"slip: words of its own"%s}}\n' "$1" "$2" >&8; }
shows() { soon "the board shows: $1" "grep -qF '$1' '$root/shown'"; }
say 1 ',"why":"out-of-paper"'
say 2 ',"why":"out-of-paper"'
shows 'Druck von Beleg 0000001: im Drucker ist kein Papier mehr: Papier einlegen'
shows 'Printing slip 0000002: the printer is out of paper: put paper in'
echo 'ok each room is told in its language'
say 1 ',"why":"on-fire"'
say 2 ''
shows 'Druck von Beleg 0000001: es ist nicht gekommen: der Stationsbetreuung sagen'
shows 'Printing slip 0000002: it did not come: tell whoever looks after the station'
echo 'ok what has no name of the list has a general word'
stop
grep -q 'words of its own' "$root/log" || fail 'the journal does not have what the program said'
! grep -q 'words of its own' "$root/shown" || fail 'the board shows what the program said'
echo 'ok the words of its own stand in the journal alone'
