#!/bin/sh
# The scanner-check sheet as it is printed: its codes, read back from the paper, are those that scan-handheld learns from.
#   scanner-check.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
for tool in pdftoppm zbarimg python3; do
	command -v $tool >/dev/null || skip "$tool is not here: run config/setup --test"
done
make=$source/tests/replay-keys/make-logs
printf '[site]\nletters = HU\n[board]\nstart = no\n' >"$data/station.ini"
start
bt label scanner-check --pdf "$root/sheet.pdf" >/dev/null
pdftoppm -r 200 -png "$root/sheet.pdf" "$root/page"
zbarimg -q --raw "$root"/page*.png >"$root/codes"
own=$(grep '^BTHU6' "$root/codes" | sort -u)
[ "$(echo "$own" | wc -l)" = 2 ] || fail "not one first and one last code on the sheet: $own"
first=$(echo "$own" | head -n 1) last=$(echo "$own" | tail -n 1)
echo "ok the sheet bears $(sort -u "$root/codes" | wc -l) codes; $first begins it, $last ends it"
# Typed by a French scanner: what is on the paper must be what the driver waits for.
"$make" --codes "$root/keys" fr ctrl "$first" ABCDEFGHIJKLMNOPQRSTUVWXYZ 0123456789 '-./+$% :*()=&#' \
	abcdefghijklmnopqrstuvwxyz "$(printf '10AB12\0352134CD')" 9506000134352 "$last" 'bandtally check ]Q1' "$last"
for code in ABCDEFGHIJKLMNOPQRSTUVWXYZ 0123456789 abcdefghijklmnopqrstuvwxyz 9506000134352 "$(printf '10AB12\0352134CD')" 'bandtally check ]Q1'; do
	grep -q "^$code\$" "$root/codes" || fail "$code is not on the sheet: $(cat "$root/codes")"
done
"$bin/scan-handheld" --events "$root/keys" --learn "$root/profile" >"$root/said" 2>&1 || fail "nothing was learned: $(cat "$root/said")"
grep -q '"code":"learned"' "$root/said" && grep -qx 'layout = fr' "$root/profile" || fail "not everything was learned: $(cat "$root/said")"
echo 'ok one pass over it teaches what there is to know'
