#!/bin/sh
# An auditor's desk: a scanner reads slips, one after the other, and each is told whether the record holds it. Nothing is
# counted there, and no slip becomes seen by it.
#   audit-desk.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
command -v python3 >/dev/null || skip 'python3 is not installed'
# A printer's program that keeps what stands in the slips' two codes.
mkdir "$root/bin"
cp "$bin/bandtallyd" "$root/bin/"
cat >"$root/bin/bandtally-print" <<PRINT
#!/bin/sh
exec sed -n -u 's/.*"code":"\([^"]*\)".*"jws":"\([^"]*\)".*/\1 \2/p' >>$root/slips
PRINT
chmod +x "$root/bin/bandtally-print"
: >"$root/slips"
tools=$bin
bin=$root/bin
bt() { "$tools/bandtally" --data "$data" "$@"; }
printf '[room 1]\nname = Theatre 1\n[room 2]\nname = Audit\nkind = audit\n[board]\nstart = no\n' >"$data/station.ini"
card() { bt label cards --room "${2:-1}" --list | awk -F '\t' -v w="$1" '$3 == w { print $1 }'; }
# desk CODE WORDS WHAT: its exit code (3 refused), and words of its answer
desk() {
	got=0
	bt scan --room 2 "$3" >"$root/out" 2>&1 || got=$?
	[ "$got" = "$1" ] || fail "exit $got instead of $1: $(cat "$root/out")"
	grep -q -- "$2" "$root/out" || fail "no '$2' in: $(cat "$root/out")"
	echo "ok $2"
}
ended_case() { # NUMBER: nothing was counted in it; what is entered afterwards makes a slip
	bt scan "$(card 'NEW CASE')" >/dev/null
	bt scan "$(card CANCEL)" >/dev/null || true
	bt scan "$(card YES)" >/dev/null || true
	type_text "case $1: looked under the dressing again"
}

start
bt catalogue import "$source/tests/replay/catalogue.csv" >/dev/null
ended_case 1
soon 'the first slip was handed over' '[ "$(wc -l <"$root/slips")" -ge 1 ]'
read -r code jws <"$root/slips"

desk 0 'Slip 0000001, copy 1, of case 1: signed by this station, and the record holds what was signed' "$jws"
desk 0 'Slip 0000001, copy 1, of case 1: this paper was made here' "$code"
bt print list | grep -q '0000001' || fail "a slip that was read at the desk is not waiting any more: $(bt print list)"
desk 3 'Not signed by any key of this station' "$(printf '%s' "$jws" | tr 'A-Za-z' 'B-ZAb-za' | sed 's/^.../eyJ/')"
desk 3 'only slips are read' '(01)09506000134352(17)280331(10)T26(21)S102'
desk 3 'only slips are read' "$(card 'NEW CASE' 2)"
desk 3 "a patient's code: nothing of it was kept" '(8018)123456789012345675'
bt scan "$jws" >"$root/out" 2>&1 && fail 'a signed summary is something to a room'
grep -q 'for the auditor' "$root/out" || fail "what a room says of a signed summary: $(cat "$root/out")"
echo 'ok a room says whom a signed summary is for'
bt sheet --room 2 | grep -q "desk" || fail "what comes next at the desk: $(bt sheet --room 2)"
stop

# An older record was put back: what was signed since is not what it holds.
mkdir "$root/older"
cp -r "$data"/record.db "$root/older/"
start
ended_case 2
soon 'the second slip was handed over' 'grep -q . "$root/slips" && [ "$(sort -u "$root/slips" | wc -l)" -ge 2 ]'
read -r code jws <<LAST
$(tail -n 1 "$root/slips")
LAST
desk 0 'Slip 0000002, copy 1, of case 2: signed by this station' "$jws"
stop
rm -rf "$data"/record.db* "$data/head"
cp "$root/older/record.db" "$data/"
start
desk 3 'Slip 0000002 is signed, but the record holds something else' "$jws"
stop
