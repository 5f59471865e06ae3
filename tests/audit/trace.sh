#!/bin/sh
# What `bandtally audit trace` finds, forward and back, beside what SQL finds in the same record.
#   trace.sh BUILD-FOLDER
set -eu
build=$1
. "$(dirname "$0")/common"
asked() { sqlite3 "$root/data/record.db" "$1"; }
cells() { grep "^$1,cell," "$root/out" | grep ",$2," | cut -d , -f 5; }
in_cases() { asked "SELECT DISTINCT case_no FROM event WHERE kind IN ('item-in', 'extra-item', 'item-listed') AND json_extract(payload, '\$.thing.$1') = '$2' AND case_no NOT IN
	(SELECT case_no FROM event WHERE kind IN ('item-struck', 'undone')) ORDER BY 1"; }
found() { cells forward Case | sort -nu; }
lot=$(asked "SELECT json_extract(payload, '\$.thing.lot') FROM event WHERE kind = 'item-in' AND json_extract(payload, '\$.thing.lot') <> '' GROUP BY 1 ORDER BY count(*) DESC LIMIT 1")
says 'a lot is traced' "lot $lot" bt audit trace --lot "$lot" --json
bt audit trace --lot "$lot" --csv >"$root/out" 2>/dev/null
in_cases lot "$lot" >"$root/want"
[ -s "$root/want" ] || fail "no case has lot $lot"
found >"$root/got"
grep -vxFf "$root/got" "$root/want" >"$root/lacking" && fail "lot $lot: these cases were not found: $(cat "$root/lacking")"
ok "in each of $(wc -l <"$root/want") cases that have it"
for case_no in $(cat "$root/got"); do
	[ "$(asked "SELECT count(*) FROM event WHERE case_no = $case_no AND json_extract(payload, '\$.thing.lot') = '$lot'")" -gt 0 ] || fail "case $case_no has none of lot $lot"
done
ok 'and in no other'
cells forward Slips | grep -q '^0000' || fail 'no slip is named'
cells forward 'Where it is now' | grep -q 'accounted for in this case' || fail 'nobody knows where it is'
ok 'with its slips, and where it is now'
says 'a room that recorded nothing is told as such' 'heard,cell' bt audit trace --lot "$lot" --csv
says 'another letter is another lot' 'The record has none' bt audit trace --lot "$lot " --json
says 'a lot that never existed' 'That is no proof' bt audit trace --lot NEVER --json
line=$(asked "SELECT json_extract(payload, '\$.batch.line') FROM event WHERE kind = 'labelled' LIMIT 1")
[ -z "$line" ] || says 'a line is traced back to its numbers' 'given out' bt audit trace --line "$line" --json
item=$(asked "SELECT json_extract(payload, '\$.thing.identity') FROM event WHERE kind = 'item-used' ORDER BY seq LIMIT 1")
bt audit trace --item "$item" --csv >"$root/out" 2>/dev/null
[ "$(found)" = "$(in_cases identity "$item")" ] || fail "item $item: $(found) and not $(in_cases identity "$item")"
ok 'one item is traced to its case'
says 'overrides, late entries and corrections' 'overrides,cell' bt audit trace --overrides --csv
corrected=$(asked "SELECT count(DISTINCT case_no) FROM event WHERE kind IN ('correction', 'undone', 'digit-earlier', 'digit-moved') AND case_no > 0")
[ "$(cells overrides Corrected | grep -c '[0-9]')" -ge "$corrected" ] || fail "fewer than $corrected cases were corrected"
ok 'every corrected case is among them'
refuses 'a badge is not traced where it cannot be recorded' 1 'not running' bt audit trace --badge 1 --why 'a card was lost' --json
refuses 'nor without a reason' 2 'a reason' bt audit trace --badge 1 --json
refuses 'nothing to trace is wrong usage' 2 'one of --line' bt audit trace --json
says 'it comes on paper' '' bt audit trace --lot "$lot" --pdf "$root/trace.pdf"
