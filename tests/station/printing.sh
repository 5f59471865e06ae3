#!/bin/sh
# Slips on their way, whatever becomes of the program that prints them: one that it had not finished is handed over
# again, with a question to the printer first; one that failed is not; a further copy has its own number.
#   printing.sh FOLDER-OF-PROGRAMS
set -eu
real=$1
bin=
. "$(dirname "$0")/common"
bin=$root/bin
mkdir "$bin"
cp "$real/bandtallyd" "$real/bandtally" "$bin"
# In the place of bandtally-print: notes each job, and says what is written to $root/say.
mkfifo "$root/say"
cat >"$bin/bandtally-print" <<X
#!/usr/bin/python3
import os, select
say = os.open("$root/say", os.O_RDWR)
with open("$root/pid", "w") as f: f.write(str(os.getpid()))
jobs = open("$root/jobs", "ab", buffering=0)
while True:
    ready = select.select([0, say], [], [])[0]
    if say in ready: os.write(1, os.read(say, 4096))
    if 0 in ready:
        data = os.read(0, 65536)
        if not data: break
        jobs.write(data)
X
chmod +x "$bin/bandtally-print"
: >"$root/jobs"
exec 8<>"$root/say"
cat >"$data/station.ini" <<X
[site]
letters = BC
[room 1]
name = Theatre 1
[board]
start = no
X
start
soon 'its program runs' '[ -s "$root/pid" ]'
bt catalogue import "$source/config/catalogue.csv" >/dev/null
bt staff add --registered --number 1 practitioner SCRUB-1 >/dev/null
bt staff add --registered --number 2 practitioner CIRC-2 >/dev/null
card() { bt label cards --list | awk -F '\t' -v m="$1" '$3 == m { print $1 }'; }
badge() { bt label badges --list | awk -F '\t' -v m="$1" '$3 == m { print $1 }'; }
scan() { bt scan "$1" >>"$root/log" || [ $? = 4 ] || fail "refused: $1"; }
jobs() { grep -c '"job"' "$root/jobs" || true; }
job() { sed -n "$1p" "$root/jobs"; }
# A written one lies where it was told to put it.
say() {
	[ "$2" != written ] || echo paper >"$data/slips/.unfinished/slip-$(printf %07d $(($1 / 100)))-copy-$(($1 % 100)).pdf"
	printf '{"v":1,"job":{"id":%s,"state":"%s","cups":7,"pages":1,"text":"slip: %s"}}\n' "$1" "$2" "$2" >&8
}
dies() {
	old=$(cat "$root/pid")
	: >"$root/pid"
	kill -9 "$old"
	soon 'another takes the place of one that died' '[ -s "$root/pid" ]'
}

scan "$(card 'NEW CASE')"
scan "$(badge SCRUB-1)"
scan "$(badge CIRC-2)"
scan '(01)09506000134352(17)330331(10)T26(21)S1'
scan "$(badge CIRC-2)"
scan "$(card 'FINAL COUNT')"
scan "$(card NO)"
soon 'the discrepancy slip is handed over' '[ "$(jobs)" = 1 ]'
job 1 | grep -q '"id":101' || fail "it is not copy 1 of slip 1: $(job 1)"
job 1 | grep -q '"again"' && fail 'a slip that was never sent asks whether the printer has it'
say 101 sent
soon 'what is said of it is listed' 'bt print list | grep -q sent'
dies
soon 'a slip that was on its way is handed over again' '[ "$(jobs)" = 2 ]'
job 2 | grep -q '"again":{"cups":7}' || fail "the printer is not asked whether it has it: $(job 2)"
stop
start
soon 'and again after a restart of the station' '[ "$(jobs)" = 3 ]'
job 3 | grep -q '"again":{"cups":7}' || fail "the printer is not asked after a restart: $(job 3)"
say 101 failed
soon 'a failure is listed' 'bt print list | grep -q failed'
bt print list | grep -q 'failed, not seen yet: [a-z]' || fail "no reason: $(bt print list)"
bt status | grep -q '^FAULT: Printing slip [0-9]*: ' || fail "no fault: $(bt status)"
dies
sleep 0.5
[ "$(jobs)" = 3 ] || fail 'a slip that failed is handed over again and again'
bt print retry 1 >/dev/null
soon 'a further copy is printed when somebody asks for it' '[ "$(jobs)" = 4 ]'
job 4 | grep -q '"id":102' || fail "it is not copy 2: $(job 4)"
job 4 | grep -q '"copy":2' || fail 'the paper does not say that it is copy 2'
job 4 | grep -q '"again"' && fail 'a copy that was never sent asks whether the printer has it'
say 102 written
soon 'it is written' 'bt print list | grep -q written'
paper=$data/slips/slip-0000001-copy-2.pdf
[ "$(cat "$paper")" = paper ] || fail 'it lies not among the slips'
[ -z "$(ls "$data/slips/.unfinished")" ] || fail 'something was left where it was written'
echo forged >"$root/forged"
for told in 101 102; do
	cp "$root/forged" "$data/slips/.unfinished/slip-0000001-copy-$((told % 100)).pdf"
	printf '{"v":1,"job":{"id":%s,"state":"written","cups":0,"pages":1,"text":"slip: again"}}\n' "$told" >&8
done
soon 'what was not handed over is not written' '[ "$(grep -c "was not to be" "$root/log")" = 1 ]'
[ "$(cat "$paper")" = paper ] && [ ! -e "$data/slips/slip-0000001-copy-1.pdf" ] ||
	fail 'a slip was replaced at the word of the program that prints'
rm -f "$data/slips/.unfinished"/*
bt print retry 1 >/dev/null
soon 'one more copy is handed over' '[ "$(jobs)" = 5 ]'
printf '{"v":1,"job":{"id":103,"state":"written","cups":0,"pages":1,"text":"slip: not there"}}\n' >&8
soon 'a file that is not there is a failure' 'bt print list | grep -q failed'
stop
echo 'ok copies have their numbers'
texts() { sqlite3 "$data/record.db" "SELECT json_extract(payload, '\$.what', '\$.text') FROM event WHERE kind = 'slip-state'"; }
[ "$(texts)" = '["sent",null]
["failed",null]
["written","slip-0000001-copy-2.pdf"]
["failed",null]' ] || fail "the record says of the slip: $(texts)"
grep -q 'slip 1, copy 3: it is said to be written, and cannot be put into its folder' "$root/log" || fail 'the journal does not say why'
echo 'ok the record keeps the name of the file, not where the folder lies, and nothing that a program says'
