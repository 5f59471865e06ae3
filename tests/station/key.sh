#!/bin/sh
# The station's key: in the record from the first start and at each change, never replaced in silence, and the earlier
# ones kept for the papers that they signed.
#   key.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
command -v sqlite3 >/dev/null || skip 'sqlite3 is not installed'
said() { bt status | grep -q -- "$1" || fail "the board does not say '$1': $(bt status)"; echo "ok $1"; }
not_said() { ! bt status | grep -q -- "$1" || fail "the board says '$1': $(bt status)"; echo "ok not: $1"; }
keys() { sqlite3 "$data/record.db" "SELECT json_extract(payload, '$.key.kid') || ' ' || coalesce(json_extract(payload, '$.n'), 0) FROM event WHERE kind = 'key' ORDER BY seq"; }
kids() { grep -o '"kid":"[^"]*"' "$data/station.pub.json" | cut -d '"' -f 4; }
slip() { # a case that is cancelled has a slip; its signature is the last that was made
	new=$(bt label cards --list | awk -F '\t' '$3 == "NEW CASE" { print $1 }')
	cancel=$(bt label cards --list | awk -F '\t' '$3 == "CANCEL" { print $1 }')
	yes=$(bt label cards --list | awk -F '\t' '$3 == "YES" { print $1 }')
	bt scan "$new" >/dev/null
	bt scan "$cancel" >/dev/null || true
	bt scan "$yes" >/dev/null || true
}

# --- the first start
start
[ "$(stat -c %a "$data/station.key")" = 600 ] || fail "the key's mode is $(stat -c %a "$data/station.key")"
not_said "key"
stop
first=$(kids)
[ "$(keys)" = "$first 0" ] || fail "the record does not name the key $first: $(keys)"
inode=$(stat -c %i "$data/station.pub.json")
start
stop
[ "$(keys)" = "$first 0" ] || fail 'an unchanged key was recorded again'
[ "$(stat -c %i "$data/station.pub.json")" = "$inode" ] || fail 'the public file was written anew'

# --- others can read it; mended
chmod 644 "$data/station.key"
start
said 'FAULT: Other users of this machine can read'
stop
chmod 600 "$data/station.key"
start
not_said 'Other users'
stop
[ "$(keys | tail -n 2 | cut -d ' ' -f 2 | tr '\n' ' ')" = '1 0 ' ] || fail "not recorded: $(keys)"

# --- a link
mv "$data/station.key" "$root/key"
ln -s "$root/key" "$data/station.key"
start
said 'symbolic link'
stop
rm "$data/station.key"
cp "$root/key" "$data/station.key"

# --- lost: never in silence, the earlier public key stays, and somebody must deal with it
start
slip
stop
rm "$data/station.key"
"$bin/bandtallyd" --data "$data" --check >"$root/out" 2>&1 && fail 'a check accepts a lost key'
grep -q 'station.key is not there' "$root/out" || fail "no word of the lost key: $(cat "$root/out")"
[ ! -e "$data/station.key" ] || fail 'a check made a key'
start
said "FAULT: The station's key was lost"
event=$(bt status | sed -n 's/.*audit settle \([0-9]*\) .*/\1/p')
stop
start
said 'key was lost'
[ "$(kids | wc -l)" = 2 ] && [ "$(kids | tail -n 1)" = "$first" ] || fail "the earlier key is gone: $(kids)"
bt audit settle "$event" 'the disk had failed' >/dev/null
not_said 'key was lost'
stop
start
not_said 'key was lost'
stop

# --- exchanged, and put back
cp "$root/key" "$data/station.key"
start
said "key is another than before"
stop
[ "$(kids | head -n 1)" = "$first" ] && [ "$(kids | wc -l)" = 2 ] || fail "the key that signs is not the first: $(kids)"
[ "$(keys | tail -n 1)" = "$first 16" ] || fail "not recorded: $(keys)"

# --- the public file goes: the record has them all
rm "$data/station.pub.json"
start
stop
[ "$(kids | wc -l)" = 2 ] || fail "a public key was lost with the file: $(kids)"

# --- a key that is none
truncate -s 31 "$data/station.key"
"$bin/bandtallyd" --data "$data" --check >"$root/out" 2>&1 && fail 'a check accepts a damaged key'
start
said 'key was damaged and lies aside'
stop
[ "$(stat -c %s "$data/station.key-damaged")" = 31 ] || fail 'the damaged key was not kept'
[ "$(stat -c %s "$data/station.key")" = 32 ] || fail 'no new key'
