#!/bin/sh
# Each kept data folder, on a copy: the command verifies its record and its slips, the station accepts its settings,
# starts on it, the open cases go on, and it starts again on what it wrote.
#   station.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
place=/tmp
[ ! -w /dev/shm ] || place=/dev/shm # no disk is waited for
. "$(dirname "$0")/../station/common"
TZ=UTC
export TZ
expect_chain() { # FILE EVENTS HASH
	bt audit verify --file "$1" >"$root/out" 2>&1 || return 1
	grep -q "^$2 " "$root/out" && grep -q "$3" "$root/out"
}
rooms_with_a_case() { bt status | sed -n 's/^room \([0-9]*\), .*: case [0-9]*$/\1/p'; }
awake() { bt sheet --room "$1" --json | grep -o '"awake":[a-z]*'; }
go_on() { # ROOM: one further scan is entered and answered
	before=$(awake "$1")
	bt scan --room "$1" "$(bt label cards --room "$1" --list | awk -F '\t' '$3 == "AWAKE PATIENT" { print $1 }')" \
		>"$root/out" 2>&1 || fail "the case of room $1 does not go on: $(cat "$root/out")"
	[ -n "$before" ] && [ "$before" != "$(awake "$1")" ] || fail "the case of room $1 did not take a scan"
}
slips_hold() { # FOLDER
	[ -d "$1/slips" ] || return 0
	for slip in "$1"/slips/*.json; do
		case $slip in *.now.json) continue ;; esac # what today's program makes of it: not signed
		jws=$(sed -n 's/^ *"jws": "\([^"]*\)".*/\1/p' "$slip")
		[ -n "$jws" ] || fail "$slip has no signed summary"
		bt audit slip --key "$1/station.pub.json" "$jws" >"$root/out" 2>&1 || fail "$slip: $(cat "$root/out")"
		code=0
		bt audit slip --key "$1/station.pub.json" "$(echo "$jws" | sed 's/[.]....\([^.]*\)$/.AAAA\1/')" \
			>/dev/null 2>&1 || code=$?
		[ "$code" = 1 ] || fail "$slip: exit $code for a signature that was changed"
	done
}

folders=0 cases=0
for kept in "$source"/tests/kept/format-*/*/; do
	kept=${kept%/}
	name=$(basename "$(dirname "$kept")")-$(basename "$kept")
	data=$root/$name
	mkdir "$data"
	cp "$kept"/*.* "$data"
	[ ! -d "$kept/head" ] || cp -r "$kept/head" "$data"
	# What its driver was is not on this machine, which a check would say.
	[ ! -f "$data/station.ini" ] || sed -i 's|^command *=.*|command = scan-replay /dev/null|' "$data/station.ini"
	chmod 600 "$data/station.key"
	read -r events hash <"$kept/chain.txt"
	expect_chain "$data/record.db" "$events" "$hash" || fail "$name does not verify: $(cat "$root/out")"
	slips_hold "$kept"
	"$bin/bandtallyd" --data "$data" --check >"$root/out" 2>&1 || fail "$name: $(cat "$root/out")"
	start
	! bt status | grep 'older record\|another record\|head file\|The station.s key' || fail "$name is taken for another record"
	rooms=$(rooms_with_a_case)
	open=$(bt status | grep -c '^room .*: case ') || true
	for room in $rooms; do
		go_on "$room"
		cases=$((cases + 1))
	done
	stop
	start
	[ "$(bt status | grep -c '^room .*: case ')" = "$open" ] || fail "$name: a case is gone after a second start"
	stop
	bt audit verify >"$root/out" 2>&1 || fail "$name: what was written after it does not verify: $(cat "$root/out")"
	echo "ok $name"
	folders=$((folders + 1))
done
[ "$folders" -ge 10 ] && [ "$cases" -ge 7 ] || fail "only $folders folders with $cases open cases were tried"
