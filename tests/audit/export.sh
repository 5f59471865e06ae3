#!/bin/sh
# What `bandtally audit export` gives: every event as JSON and CSV, and a case as FHIR R4 that a strict check lets pass, with
# signatures over exactly the documents that they stand beside.
#   export.sh BUILD-FOLDER
set -eu
build=$1
here=$(cd "$(dirname "$0")" && pwd)
command -v python3 >/dev/null || { echo 'skipped: python3 is not installed (config/setup --test)'; exit 77; }
cases=20 steps=300
. "$here/common"
asked() { sqlite3 "$root/data/record.db" "$1"; }
bt audit export --json >"$root/events.json"
asked 'SELECT payload FROM event ORDER BY seq' | cmp -s - "$root/events.json" || fail 'the events are not as the record has them'
ok 'every event as the record has it'
bt audit export --csv >"$root/events.csv"
python3 - "$root/events.json" "$root/events.csv" <<'X' || fail 'the CSV says something else than the JSON'
import csv, json, sys
events = [json.loads(line) for line in open(sys.argv[1], encoding="utf-8")]
rows = list(csv.DictReader(open(sys.argv[2], encoding="utf-8", newline="")))
assert len(events) == len(rows) > 500, (len(events), len(rows))
for e, r in zip(events, rows):
    assert int(r["seq"]) == e["seq"] and r["kind"] == e["kind"] and int(r["case"] or 0) == e.get("case", 0), r
    assert r["text"] == e.get("text", "") and int(r["digit"] or 0) == e.get("digit", 0), r
    assert r["lot"] == e.get("thing", {}).get("lot", "") and (r["what"] == str(e.get("what", ""))), r
X
ok 'and as CSV the same'
check() { python3 "$here/fhir-check.py" "$here/fhir-elements.tsv" "$@"; }
for case_no in $(asked "SELECT DISTINCT case_no FROM event WHERE case_no > 0"); do
	bt audit export --fhir "$case_no" >"$root/bundle.json" || fail "case $case_no is not exported"
	check "$root/bundle.json" >"$root/out" || fail "case $case_no: $(cat "$root/out")"
	seen=$case_no
done
ok "each of $seen cases, odd ones too, passes the strict check"

# A station at work: its own key, a maker's code, and a slip whose text was read.
mkdir "$root/bin" "$root/station"
cp "$bin/bandtallyd" "$bin/bandtally" "$root/bin/"
printf '#!/bin/sh\nexec sed -n -u '\''s/.*"jws":"\\([^"]*\\)".*/\\1/p'\'' >>%s/slips\n' "$root" >"$root/bin/bandtally-print"
chmod +x "$root/bin/bandtally-print"
: >"$root/slips"
printf '[site]\nletters = BC\nname = Invented hospital\n[room 1]\nname = Theatre 1\n[board]\nstart = no\n' >"$root/station/station.ini"
at() { "$root/bin/bandtally" --data "$root/station" "$@"; }
"$root/bin/bandtallyd" --data "$root/station" 2>"$root/log" &
daemon=$!
trap 'kill $daemon 2>/dev/null || true; rm -rf "$root"' EXIT
tries=200
until at status >/dev/null 2>&1; do
	[ $((tries -= 1)) -gt 0 ] || fail "the station does not start: $(cat "$root/log")"
	sleep 0.05
done
at catalogue import "${BANDTALLY_SOURCE:-$here/../..}/config/catalogue.csv" >/dev/null
at staff add --registered --number 1 practitioner SCRUB-1 >/dev/null
at staff add --registered --number 2 practitioner CIRC-2 >/dev/null
at staff add --registered --number 3 surgeon SURG-3 >/dev/null
{ at label cards --list; at label digits --list; at label badges --list; } >"$root/codes"
scan() {
	for m in "$@"; do
		code=$(awk -F '\t' -v m="$m" '$3 == m { print $1 }' "$root/codes")
		at scan "${code:-$m}" >"$root/said" || [ $? = 4 ] || fail "$m: $(cat "$root/said")"
	done
}
scan 'NEW CASE' SCRUB-1 CIRC-2 '(01)09506000134352(17)330331(10)T26(21)S1' CIRC-2 'right index finger'
scan 'right index finger' OFF 'FINAL COUNT' INTACT CIRC-2 'right index finger' SURG-3
tries=200
until [ -s "$root/slips" ]; do
	[ $((tries -= 1)) -gt 0 ] || fail "no slip was handed over: $(at sheet)"
	sleep 0.05
done
printf '[systems]\nitem = urn:oid:1.2.3.4\n' >"$root/systems.ini"
at audit export --fhir 1 --slips "$root/slips" --systems "$root/systems.ini" >"$root/bundle.json" || fail 'the case is not exported'
kill "$daemon"
wait "$daemon" || true
check "$root/bundle.json" --variants || fail 'the strict check'
python3 - "$root/bundle.json" "$root/slips" "$root/jws" <<'X' || fail 'what was signed is not what stands there'
import base64, json, sys
entries = json.load(open(sys.argv[1]))["entry"]
by = {e["fullUrl"]: e["resource"] for e in entries}
signed = [r for r in by.values() if r["resourceType"] == "Provenance"]
assert len(signed) == 2, "the seal at the end of the case, and the slip"
for p in signed:
    jws = base64.b64decode(p["signature"][0]["data"]).decode()
    payload = jws.split(".")[1]
    payload = base64.urlsafe_b64decode(payload + "=" * (-len(payload) % 4))
    (target,) = p["target"]
    attachment = by[target["reference"]]["content"][0]["attachment"]
    assert base64.b64decode(attachment["data"]) == payload and attachment["size"] == len(payload)
    print(jws, file=open(sys.argv[3], "a"))
assert any(json.loads(base64.b64decode(r["content"][0]["attachment"]["data"])).get("slip") == 1 for r in by.values() if r["resourceType"] == "DocumentReference")
assert any(r.get("serialNumber") == "S1" and r["udiCarrier"][0]["entryType"] == "manual" for r in by.values()), "typed at the command"
X
ok 'each signature stands beside exactly the bytes that it signs'
if command -v node >/dev/null; then
	while read -r jws; do
		code=0
		node "$here/../unit/record/jws.mjs" "$root/station/station.pub.json" "$jws" >"$root/out" || code=$?
		[ "$code" = 0 ] || [ "$code" = 77 ] || fail "npm's jose says of it: $(cat "$root/out")"
	done <"$root/jws"
	[ "$code" = 77 ] || ok "npm's jose verifies both with the station's public key"
	if [ "$code" != 77 ]; then
		jws=$(tail -n 1 "$root/jws") # of the slip; the other is a seal
		signs() { node "$here/../unit/record/jws.mjs" --sign "$1" "$root/station/station.pub.json" "$jws" ${2:+"$2"}; }
		at audit slip "$(signs "$root/station/station.key")" >"$root/out" || fail "what npm's jose signs: $(cat "$root/out")"
		grep -q '^signed and held: ' "$root/out" || fail "what npm's jose signs: $(cat "$root/out")"
		for by in - '- none'; do # the same bytes by somebody else, and by nobody
			# shellcheck disable=SC2086
			at audit slip "$(signs $by)" >"$root/out" 2>&1 && fail "signed by nobody of ours, and taken: $by"
			grep -q '^not signed by any key of this station' "$root/out" || fail "signed by $by: $(cat "$root/out")"
		done
		ok "what npm's jose signs with the station's key is the station's, and with another it is not"
	fi
	code=0
	node "$here/fhir-witness.mjs" "$root/bundle.json" >"$root/out" || code=$?
	[ "$code" = 0 ] || [ "$code" = 77 ] || fail "npm's fhir says of it: $(cat "$root/out")"
	cat "$root/out"
fi
refuses 'a case that never was' 1 'has none of that number' bt audit export --fhir 9999
printf '[systems]\nnothing = urn:x:y\n' >"$root/systems.ini"
refuses 'an identifier system that is none' 1 'is no identifier system' bt audit export --fhir 1 --systems "$root/systems.ini"
refuses 'no form is wrong usage' 2 'one of --json' bt audit export
