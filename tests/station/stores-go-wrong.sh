#!/bin/sh
# What goes wrong at a stores bench, on the station as it runs: a box read twice, ten thousand packs, a lot that expires in a
# room, two benches that print at once, power that fails between print and read-back, and a roll that is too small. Each has
# an answer, nothing is lost, and no number is given out twice.
#   stores-go-wrong.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
make_scanner replay stores
cat >"$data/station.ini" <<S
[site]
letters = BC
[room 1]
name = Theatre 1
[room 9]
name = Stores
kind = stores
[room 10]
name = Stores, night
kind = stores
[driver stores]
command = $root/driver
room = 9
[board]
start = no
S
exec 9<>"$root/lines"
start
# a box of ten has a code of its own
sed 's/09506000134352/& 09506000134994*10/' "$source/config/catalogue.csv" >"$root/list.csv"
bt catalogue import "$root/list.csv" >/dev/null
for name in STORES-1 STORES-2; do bt staff add practitioner $name >/dev/null; done
card() { bt label cards --room "$1" --list | awk -F '\t' -v m="$2" '$3 == m { print $1 }'; } # ROOM MEANING
at() { # ROOM WHAT: scanned, or typed where it is no code
	bt scan --room "$1" "$2" 2>&1 || true
}
must() {                                        # SENTENCE WORDS WHAT-WAS-SAID
	case $3 in
	*"$2"*) echo "ok $1" ;;
	*) fail "$1: $3" ;;
	esac
}
read_by_scanner() { # CODE...: as quickly as a scanner sends them
	for code; do
		printf '{"v":1,"scan":{"aim":"]d2","data":"%s","ms":%s}}\n' "$code" "$(awk '{ printf "%d", $1 * 1000 }' /proc/uptime)"
	done >&9
}
stock() { bt stock list "$1" --json | sed -n "s/.*\"$2\":\\(-*[0-9]*\\).*/\\1/p"; } # LINE FIELD
number() { echo "$1" | awk '{ printf "%08d", $1 }'; }
# The labels of a printing, from a picture of its paper: a line each, number and code, into $root/labels.
came_out() { # FIRST LAST
	paper="$data/labels/labels-$(number "$1")-$(number "$2").pdf"
	soon "labels $1 to $2 are on paper" "[ -s '$paper' ]"
	rm -f "$root"/page*
	pdftoppm -r 300 -gray "$paper" "$root/page"
	"$bin/scan-camera" --image "$root"/page* | sed -n 's/.*"data":"91\(PBC[0-9]\{2\}\([0-9]\{8\}\)[0-9]\{2\}\)".*/\2 (91)\1/p' | sort -u >>"$root/labels"
}
label() { awk -v n="$(number "$1")" '$1 == n { print $2 }' "$root/labels"; }
open_labels() { # ROOM
	bt sheet --room "$1" --json | python3 -c 'import json, sys
for p in json.load(sys.stdin)["stores"]["labels"]: print(*p["open"], sep="\n")'
}
box='(01)09506000134994(17)330331(10)T26' # of ten

# A box that is read twice is one box; ten thousand packs are asked about; more than a bench takes at once are refused.
read_by_scanner 01095060001349941733033110T26 01095060001349941733033110T26
soon 'the box is asked about' 'bt sheet --room 9 --json | grep -q "How many boxes came, of 10 packs in each"'
must 'one box of ten' 'Received: 10 packs' "$(at 9 1)"
[ "$(stock GREEN-M received)" = 10 ] || fail "a box that was read twice is $(stock GREEN-M received) packs"
at 9 "$box" >/dev/null
must 'ten thousand packs are asked about' '10000' "$(at 9 1000)"
[ "$(stock GREEN-M received)" = 10 ] || fail 'they are received before anybody said that it is so many'
must 'and are taken when it is so' 'Received: 10000 packs' "$(at 9 "$(card 9 YES)")"
[ "$(stock GREEN-M shelf)" = 10010 ] || fail "the shelf has $(stock GREEN-M shelf) of 10010 packs"
at 9 "$box" >/dev/null
must 'more than go at once are refused' 'number' "$(at 9 10001)"
[ "$(stock GREEN-M received)" = 10010 ] || fail 'what was refused was received'
at 9 0 >/dev/null

# Two benches print at the same time: every number is given out once, and each bench reads its own back.
print_at() { # ROOM HOW-MANY
	at "$1" "$(card "$1" 'PRINT LABELS')" >/dev/null
	at "$1" GREEN-M/T26 >/dev/null
	at "$1" "$2"
}
read_back_at() { # ROOM: every open label of its printing, and the box
	for number in $(open_labels "$1"); do at "$1" "$(label "$number")" >/dev/null; done
	at "$1" "$box"
}
first_of() { sed -n 's/.*Labels \([0-9]*\) to .*/\1/p' "$root/$1"; }
last_of() { sed -n 's/.*Labels [0-9]* to \([0-9]*\).*/\1/p' "$root/$1"; }
(print_at 9 7 >"$root/nine") &
nine=$!
print_at 10 5 >"$root/ten"
wait $nine
must 'one bench numbers its labels' 'Labels 0000' "$(cat "$root/nine")"
must 'the other numbers others meanwhile' 'Labels 0000' "$(cat "$root/ten")"
came_out "$(first_of nine)" "$(last_of nine)"
came_out "$(first_of ten)" "$(last_of ten)"
for room in 9 10; do must "the bench of room $room reads its own back" 'Done.' "$(read_back_at $room)"; done
[ "$(stock GREEN-M labelled)" = 12 ] || fail "12 labels were printed and read back, and $(stock GREEN-M labelled) stand there"

# The power fails between print and read-back: what is open is open still, and no number comes again.
print_at 9 4 >/dev/null
came_out 13 16
at 9 "$(label 13)" >/dev/null
kill -9 "$daemon"
wait "$daemon" 2>/dev/null || true
start
must 'after a power cut the three that were not read are open' '14 15 16' "$(open_labels 9 | tr '\n' ' ')"
must 'one that was read before is known' 'read back already' "$(at 9 "$(label 13)")"
must 'it asks whether they came out' '3 labels' "$(at 9 "$(card 9 'PRINT LABELS')")"
must 'those that did not come out get other numbers' 'labels 00000017 to 00000019 are printed' "$(at 9 "$(card 9 YES)")"
came_out 17 19
must 'the box closes them' 'Done.' "$(read_back_at 9)"
must 'one that never came out is refused where it turns up' 'spoilt' "$(at 9 "$(label 15)")"

# It fails before the printer's program had drawn them: what never comes is not waited for in silence.
unknown='Printing labels .*the station was started anew and does not know whether they came out'
printer=$(ps -o pid=,args= --ppid "$daemon" | awk '/bandtally-print --serve/ { print $1 }')
kill -STOP "$printer"
print_at 9 2 >/dev/null
kill -9 "$daemon" "$printer"
wait "$daemon" 2>/dev/null || true
start
soon 'labels that never came out are named' 'bt status | grep -q "20 to 00000021: the station was started anew"'
at 9 "$(card 9 'PRINT LABELS')" >/dev/null
must 'they are replaced too' 'labels 00000022 to 00000023' "$(at 9 "$(card 9 YES)")"
soon 'and nothing is said of them any more' '! bt status | grep -q "$unknown"'
came_out 22 23
stop
start
! bt status | grep -q "$unknown" || fail 'labels that lie there are said to be missing'
stop
rm "$data/labels/labels-00000022-00000023.pdf" # as where a printer had them
start
soon 'of what a printer had it is not known' 'bt status | grep -q "22 to 00000023: the station was started anew"'
at 9 "$(label 22)" >/dev/null
soon 'until one of them is read' '! bt status | grep -q "$unknown"'
must 'the box closes them as well' 'Done.' "$(read_back_at 9)"

# A roll on which the symbol does not fit: it says what would, and what was numbered is replaced once such a roll lies there.
printf '[medium roll]\ndpi = 203\nlabel_mm = 30 x 15\n' >"$data/labels.ini"
stop
printf '[labels]\nmedia = roll\n' >>"$data/station.ini"
start
print_at 9 2 >/dev/null
soon 'a roll that is too small is named' 'bt status | grep -q "Printing labels 00000024 to 00000025: .*does not fit on these labels"'
soon 'and the journal has the size that would do' 'grep -q "use labels of at least [0-9]* x [0-9]* mm" "$root/log"'
printf '[medium roll]\ndpi = 203\nlabel_mm = 57 x 32\n' >"$data/labels.ini"
at 9 "$(card 9 'PRINT LABELS')" >/dev/null
must 'they are replaced' 'labels 00000026 to 00000027' "$(at 9 "$(card 9 YES)")"
came_out 26 27
soon 'and the fault is over' '! bt status | grep -q "does not fit on these labels"'
must 'the box closes these too' 'Done.' "$(read_back_at 9)"

stop
sqlite3 "$data/record.db" "SELECT json_extract(payload, '$.batch.first'), json_extract(payload, '$.batch.last') FROM event
	WHERE kind = 'labelled' ORDER BY seq" | tr '|' ' ' | while read -r first last; do seq "$first" "$last"; done >"$root/numbers"
seq 1 27 | cmp -s - "$root/numbers" || fail "numbers are doubled or left out: $(tr '\n' ' ' <"$root/numbers")"
echo 'ok each number was given out once, without a gap'
