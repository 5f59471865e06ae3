#!/bin/sh
# The samples of labels, badges and cards in labels/samples are what `bandtally label` hands to the printer's program, but
# for the time. The samples of slips are held by tests/replay.
#   samples.sh FOLDER-OF-PROGRAMS [--update]
set -eu
programs=$1 update=${2:-}
. "$(dirname "$0")/common"
command -v python3 >/dev/null || skip 'python3 is not installed (config/setup --test)'
bin=$root/bin
mkdir "$bin"
cp "$programs/bandtally" "$programs/bandtallyd" "$bin"
printf '#!/bin/sh\n[ "$1" = --pdf ] && exec cat >"$2"\nexec cat >/dev/null\n' >"$bin/bandtally-print"
chmod +x "$bin/bandtally-print"
cat >"$data/station.ini" <<X
[site]
letters = BC
telephone = +44 20 7946 0000
name = Example Hand Unit
[room 1]
name = Theatre 1
[room 2]
name = Theatre 2
[room 3]
name = Minor procedures
single_operator = yes
[room 4]
name = Theatre 4
[driver camera-1]
command = scan-camera --device /dev/null
room = 4
[board]
start = no
X
start
bt catalogue import "$source/config/catalogue.csv" >/dev/null
for person in 'practitioner SCRUB-1' 'practitioner CIRC-2' 'surgeon SURG-3' 'surgeon EDOC-4' 'charge CHARGE-6'; do
	# shellcheck disable=SC2086
	bt staff add --registered $person >/dev/null
done
bt staff add practitioner SUPPORT-7 >/dev/null
same() { # SAMPLE WORDS-OF-LABEL…
	name=$1
	shift
	bt label "$@" --pdf "$root/$name.json" >/dev/null
	python3 - "$source/labels/samples/$name.json" "$root/$name.json" "$update" <<'X' || fail "labels/samples/$name.json is not what 'bandtally label $*' prints"
import json, sys
kept, made, update = sys.argv[1:]
now = json.load(open(made)) | {"time": "2026-11-25T10:43:07+00:00"}
if update == "--update":
    open(kept, "w").write(json.dumps(now, indent=1, sort_keys=True, ensure_ascii=False) + "\n")
then = json.load(open(kept))
if now != then:
    print("now:     ", json.dumps(now, sort_keys=True)[:2000])
    print("expected:", json.dumps(then, sort_keys=True)[:2000])
    sys.exit(1)
X
	echo "ok $name"
}
same pack-labels pack --line GREEN-M --lot T26 --expiry 2028-03-31 --count 3
same digit-cards digits --room 2
same cards cards --room 2
same cards-alone cards --room 3
same cards-camera cards --room 4
same digit-cards-camera digits --room 4
same badges badges
same count-sheet paper-sheet --room 2 --first 3 --count 2
same briefing briefing --room 2
same leaflet leaflet
same practice practice --room 2
same scanner-check scanner-check
stop
