#!/bin/sh
# Every paper in German and in two languages of the tests, one that is longer and one that goes from right to left: what the
# station's scripts print, and what `bandtally label` hands to the printer's program (tests/unit/labels/papers-spoken.c says what
# is looked at).
#   papers-languages.sh FOLDER-OF-PROGRAMS
set -eu
programs=$1
. "$(dirname "$0")/common"
bin=$root/bin
tests=$programs/../tests
mkdir "$bin"
cp "$programs/bandtally" "$programs/bandtallyd" "$bin"
printf '#!/bin/sh\n[ "$1" = --pdf ] && exec cat >"$2"\nexec cat >/dev/null\n' >"$bin/bandtally-print"
chmod +x "$bin/bandtally-print"
mkdir "$root/spoken"
cp "$programs"/../words/de.mo "$tests"/words/xx.mo "$tests"/words/he.mo "$root/spoken"
export BANDTALLY_WORDS="$root/spoken"
mkdir "$root/half"
BANDTALLY_SOURCE=$source XDG_CACHE_HOME=$root XDG_DATA_HOME=$root "$tests/half-year" "$root/half" 7 >/dev/null
export XDG_CACHE_HOME="$root" XDG_DATA_HOME="$root"
label() { # NAME WORDS-OF-LABEL…
	name=$1
	shift
	bt label "$@" --pdf "$root/$language/$name.json" >/dev/null || fail "label $* in $language"
}
audit() { # NAME WORDS-OF-AUDIT…: of an invented half year
	name=$1
	shift
	set -- "${name%%-*}" "$@"
	bt audit "$@" --file "$root/half/record.db" --language "$language" --pdf "$root/$language/audit-$name.json" >/dev/null 2>"$root/err" ||
		fail "audit $* in $language: $(cat "$root/err")"
}
speak() { # LANGUAGE
	language=$1
	mkdir "$root/$language"
	rm -rf "${data:?}"
	mkdir "$data"
	cat >"$data/station.ini" <<X
[site]
letters = BC
telephone = +44 20 7946 0000
name = Example Hand Unit
language = $language
[room 1]
name = Theatre 1
[room 2]
name = Minor procedures
single_operator = yes
[room 3]
name = Theatre 3
[room 4]
name = Stores
kind = stores
[driver camera-1]
command = scan-camera --device /dev/null
room = 3
[board]
start = no
X
	cp "$source/config/labels.ini" "$data"
	start
	bt catalogue import "$source/config/catalogue.csv" >/dev/null
	for person in 'practitioner SCRUB-1' 'surgeon SURG-3' 'charge CHARGE-6'; do
		# shellcheck disable=SC2086
		bt staff add --registered $person >/dev/null
	done
	bt staff add practitioner SUPPORT-7 >/dev/null
	for room in 1 3; do
		label digits-$room digits --room $room
	done
	for room in 1 2 3 4; do
		label cards-$room cards --room $room
	done
	label badges badges
	label count-sheet paper-sheet --room 1 --count 2
	label count-sheet-alone paper-sheet --room 2
	label briefing briefing --room 1
	label leaflet leaflet
	label practice practice --room 1
	label scanner-check scanner-check
	label pack pack --line GREEN-M --lot T26 --expiry 2028-03-31 --count 3
	label pack-on-sheet pack --line GREEN-M --lot T26 --expiry 2028-03-31 --count 3 --media sheet24
	stop
	audit report --from 2026-11-30 --to 2027-05-30 --list "$root/half/list.csv"
	audit report-few --month 2026-11
	audit case 7
	audit trace --line GREEN-M
	audit trace-overrides --overrides
	audit sample 20 --seed 7
	audit sample-planned 20 --seed 7 --list "$root/half/list.csv"
	"$tests/replay-scripts" --spoken "$language" "$root/$language" "$source"/tests/replay/*.t
	"$tests/papers-spoken" "$language" "$root/$language"/*.json >"$root/found" || {
		head -n 40 "$root/found"
		fail "papers in '$language'"
	}
	tail -n 1 "$root/found"
}
for each in ${2:-de xx he}; do
	speak "$each"
done
