#!/bin/sh
# The scanner-check sheet as it is printed: its codes, read back from the paper, are those that scan-handheld learns from.
#   scanner-check.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
for tool in pdftoppm zbarimg python3; do
	command -v $tool >/dev/null || { echo "skipped: $tool is not here: run config/setup --test" && exit 77; }
done
make=${BANDTALLY_SOURCE:-$(dirname "$0")/../..}/tests/replay-keys/make-logs
data=$(mktemp -d /tmp/bandtally-check-XXXXXX)
daemon=
finish() {
	[ -z "$daemon" ] || kill "$daemon" 2>/dev/null || true
	[ -z "$daemon" ] || wait "$daemon" 2>/dev/null || true
	rm -rf "$data"
}
trap finish EXIT
fail() {
	echo "FAIL: $*"
	exit 1
}
printf '[site]\nletters = HU\n[board]\nstart = no\n' >"$data/station.ini"
"$bin/bandtallyd" --data "$data" 2>"$data/log" &
daemon=$!
tries=100
until "$bin/bandtally" --data "$data" status >/dev/null 2>&1; do
	[ $((tries -= 1)) -gt 0 ] || fail 'the station did not start'
	sleep 0.05
done
"$bin/bandtally" --data "$data" label scanner-check --pdf "$data/sheet.pdf" >/dev/null
pdftoppm -r 200 -png "$data/sheet.pdf" "$data/page"
zbarimg -q --raw "$data"/page*.png >"$data/codes"
own=$(grep '^BTHU6' "$data/codes" | sort -u)
[ "$(echo "$own" | wc -l)" = 2 ] || fail "not one first and one last code on the sheet: $own"
first=$(echo "$own" | head -n 1) last=$(echo "$own" | tail -n 1)
echo "ok the sheet bears $(sort -u "$data/codes" | wc -l) codes; $first begins it, $last ends it"
# Typed by a French scanner: what is on the paper must be what the driver waits for.
"$make" --codes "$data/keys" fr ctrl "$first" ABCDEFGHIJKLMNOPQRSTUVWXYZ 0123456789 '-./+$% :*()=&#' \
	abcdefghijklmnopqrstuvwxyz "$(printf '10AB12\0352134CD')" 9506000134352 "$last" 'bandtally check ]Q1' "$last"
for code in ABCDEFGHIJKLMNOPQRSTUVWXYZ 0123456789 abcdefghijklmnopqrstuvwxyz 9506000134352 "$(printf '10AB12\0352134CD')" 'bandtally check ]Q1'; do
	grep -q "^$code\$" "$data/codes" || fail "$code is not on the sheet: $(cat "$data/codes")"
done
"$bin/scan-handheld" --events "$data/keys" --learn "$data/profile" >"$data/said" 2>&1 || fail "nothing was learned: $(cat "$data/said")"
grep -q '"code":"learned"' "$data/said" && grep -qx 'layout = fr' "$data/profile" || fail "not everything was learned: $(cat "$data/said")"
echo 'ok one pass over it teaches what there is to know'
