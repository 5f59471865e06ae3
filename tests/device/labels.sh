#!/bin/bash
# Labels of a stores bench through a real CUPS to an IPP Everywhere printer that runs out of labels in the middle: what came out
# is read back, what comes out once a new roll lies there too, and what never comes out gets other numbers. None is lost, and no
# number comes twice.
#   labels.sh FOLDER-OF-PROGRAMS
# Exit 0 passed, 1 failed, 77 skipped (says why). Loopback and free ports only; ends only what it started.
set -u
bin=${1:?folder of programs}
here=$(cd "$(dirname "$0")" && pwd)
source=${BANDTALLY_SOURCE:-$(cd "$here/../.." && pwd)}
queue=labels
. "$here/print-rig"

data=$D/data
mkdir "$data"
printf '[site]\nletters = BC\n[room 9]\nname = Stores\nkind = stores\n[room 1]\nname = Theatre 1\n[board]\nstart = no\n[labels]\nqueue = labels\n' \
	>"$data/station.ini"
bt() { "$bin/bandtally" --data "$data" "$@"; }
"$bin/bandtallyd" --data "$data" 2>"$D/log/station" &
own_pid=$!
until_true 10 'bt status >/dev/null 2>&1' || skip "the station does not start: $(tail -1 "$D/log/station")"
bt catalogue import "$source/config/catalogue.csv" >/dev/null
for name in STORES-1 STORES-2; do bt staff add practitioner $name >/dev/null; done
bt stock receive GREEN-M --lot T26 --expiry 2033-03-31 --packs 20 --by 1 --and 2 >/dev/null
cards=$(bt label cards --room 9 --list)
card() { awk -F '\t' -v m="$1" '$3 == m { print $1 }' <<<"$cards"; }
at() { bt scan --room 9 "$1" 2>&1; }
print_labels() { # HOW MANY: the sentence that numbers them
	at "$(card 'PRINT LABELS')" >/dev/null
	at GREEN-M/T26 >/dev/null
	at "$1"
}
# The codes of the packs' labels on the first N pages of the newest document, two pages an item. The printer has no roll, so that
# each lies in the middle of a sheet.
read_pages() { # N
	local f
	f=$(find "$D/ctl" -name 'doc.*' | sort | tail -1)
	rm -f "$D"/page*
	pdftoppm -r 300 -gray -x 1000 -y 1250 -W 550 -H 850 -l "$1" "$f" "$D/page"
	"$bin/scan-camera" --image "$D"/page* 2>/dev/null | sed -n 's/.*"data":"91\(PBC00[0-9]\{10\}\)".*/(91)\1/p'
}
came_out=$D/came-out
read_back() { # PAGES: what was said to each
	local code
	for code in $(read_pages "$1"); do
		grep -qxF "$code" "$came_out" && continue
		echo "$code" >>"$came_out"
		at "$code"
	done
}
: >"$came_out"
# The paper runs out behind the first 4 pages, as the printer says itself.
sed -i "s|^empty)|middle)\n\techo 'ATTR: job-impressions-completed=4' >\&2\n\techo 'STATE: +media-empty,media-needed' >\&2\n\tn=0; while [ \"\$(cat $D/ctl/mode)\" = middle ] \&\& [ \$n -lt 300 ]; do sleep 0.1; n=\$((n+1)); done\n\techo 'STATE: -media-empty,media-needed' >\&2\n\t[ \"\$(cat $D/ctl/mode)\" = ok ] ;;\n&|" "$D/paper"

pack() { bt label pack --line GREEN-M --lot T26 --expiry 2033-03-31 --count 2 --printer "$1" >"$D/out" 2>&1; }
ok "a queue that is not there: no number is used up" \
	'! pack nowhere && grep -q "no such queue" "$D/out" && ! grep -q "item numbers" "$D/out"'
ok "an address where nothing answers: neither" \
	'! pack ipp://127.0.0.1:9/ipp/print && grep -q "nothing answers there" "$D/out" && ! grep -q "item numbers" "$D/out"'

echo middle >"$D/ctl/mode"
ok "four labels are numbered" 'print_labels 4 | grep -q "Labels 00000001 to 00000004"'
ok "out of labels in the middle: the station says so, and that it goes on by itself" \
	'until_true 30 "bt status | grep -q \"Printing labels 00000001 to 00000004: .*out of paper: put paper in\""'
ok "what came out is read back, and two are open" 'read_back 4 | grep -q "Label 00000002 read back. 2 are open"'
ok "what is not read back is not issued" '! bt stock issue --room 1 --labels 3-3 >"$D/out" 2>&1 && grep -q "was not read back" "$D/out"'
echo ok >"$D/ctl/mode"
ok "a new roll: the fault is over" 'until_true 40 "! bt status | grep -q \"Printing labels\""'
ok "the rest comes out and is read back" 'read_back 8 | grep -q "each is read back"'
ok "the box closes them" 'bt stock close GREEN-M >"$D/out"'
ok "one job was printed once" '[ $(documents) = 1 ]'

echo middle >"$D/ctl/mode"
ok "three more are numbered" 'print_labels 3 | grep -q "Labels 00000005 to 00000007"'
ok "out of labels again" 'until_true 30 "bt status | grep -q \"Printing labels 00000005 to 00000007: .*out of paper\""'
ok "what came out is read back" 'read_back 4 | grep -q "Label 00000006 read back. 1 is open"'
echo fail >"$D/ctl/mode" # the printer gives the job up
sleep 2
echo ok >"$D/ctl/mode"
ok "PRINT LABELS asks whether the one came out whole" 'at "$(card "PRINT LABELS")" | grep -q "1 label"'
ok "it did not: it is spoilt, and another number is printed" 'at "$(card YES)" | grep -q "00000008 to 00000008"'
ok "which comes out" 'until_true 60 "[ \$(documents) = 3 ]"'
ok "and is read back" 'read_back 2 | grep -q "each is read back"'
ok "the box closes them too" 'bt stock close GREEN-M >"$D/out"'

# What is replaced while its job still waits does not come out later.
waiting() { lpstat -W not-completed -o labels | wc -l; }
ok "the queue is done with the others" 'until_true 60 "[ \$(waiting) = 0 ]"'
cupsdisable labels
ok "three more are numbered" 'print_labels 3 | grep -q "Labels 00000009 to 00000011"'
ok "which wait in the queue" 'until_true 30 "bt status | grep -q \"Printing labels 00000009 to 00000011: .*paused\"" && [ $(waiting) = 1 ]'
ok "PRINT LABELS asks about the three" 'at "$(card "PRINT LABELS")" | grep -q "3 labels"'
ok "others are printed in their place" 'at "$(card YES)" | grep -q "00000012 to 00000014"'
ok "the job of the first three is withdrawn" 'until_true 20 "grep -q \"labels 9 to 11: withdrawn\" \"$D/log/station\""'
ok "and one job waits" 'until_true 20 "[ \$(waiting) = 1 ]"'
cupsenable labels
ok "the queue goes on: the other three come out alone" 'until_true 60 "[ \$(waiting) = 0 ]" && [ $(documents) = 4 ]'
ok "and are read back" 'read_back 6 | grep -q "each is read back"'
ok "the box closes them as well" 'bt stock close GREEN-M >"$D/out"'

echo middle >"$D/ctl/mode"
ok "three are numbered, and the labels run out" \
	'print_labels 3 | grep -q "15 to 00000017" && until_true 30 "bt status | grep -q \"Printing labels 00000015 to 00000017: .*out of paper\""'
ok "two are read back" 'read_back 4 | grep -q "Label 00000016 read back. 1 is open"'
at "$(card 'PRINT LABELS')" >"$D/out"
ok "the one that is open is replaced" 'at "$(card YES)" | grep -q "00000018 to 00000018"'
ok "the job that was printing is withdrawn" 'until_true 20 "grep -q \"labels 15 to 17: withdrawn\" \"$D/log/station\""'
echo ok >"$D/ctl/mode"
ok "the other one comes out" 'until_true 60 "[ \$(documents) = 6 ]" && until_true 30 "[ \$(waiting) = 0 ]"'
ok "and is read back too" 'read_back 2 | grep -q "each is read back"'
bt stock list GREEN-M --json >"$D/list"
ok "printed = read back + spoilt" 'grep -q "\"labelled\":13" "$D/list" && grep -q "\"label_spoilt\":5" "$D/list" && grep -q "\"label_open\":0" "$D/list"'
ok "no number came out twice" '[ $(sort "$came_out" | uniq -d | wc -l) = 0 ] && [ $(wc -l <"$came_out") = 13 ]'
echo "$failures failures"
[ "$failures" = 0 ]
