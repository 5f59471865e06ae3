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

# A check that is begun where people count: nothing of theirs is swallowed.
set -- # more codes than the driver keeps
while [ $# -lt 70 ]; do
	set -- "$@" 9506000134352
done
"$make" --codes "$root/keys" fr ctrl "$first" ABCDEFGHIJKLMNOPQRSTUVWXYZ "$@" BTHU10104045 0123456789
! "$bin/scan-handheld" --events "$root/keys" --learn "$root/cut" >"$root/said" 2>&1 || fail "something was learned: $(cat "$root/said")"
[ "$(grep -c '"scan"' "$root/said")" = 1 ] && grep -q '"data":"BTHU10104045"' "$root/said" && grep -q 'a card, badge or digit ended the check and was entered' "$root/said" && [ ! -s "$root/cut" ] ||
	fail "a card during the check: $(cat "$root/said")"
echo 'ok a card ends the check, is handed on, and leaves no profile'
# The second half of the sheet two minutes after the first.
"$make" --codes "$root/keys" fr ctrl "$first" ABCDEFGHIJKLMNOPQRSTUVWXYZ
"$make" --codes "$root/later" fr ctrl 0123456789 '-./+$% :*()=&#' abcdefghijklmnopqrstuvwxyz "$(printf '10AB12\0352134CD')" 9506000134352 "$last" "$last"
for minutes in 1 2; do
	{
		cat "$root/keys"
		awk -v ms=$((minutes * 60000)) '{ $1 += ms; print }' "$root/later"
	} >"$root/slow"
	"$bin/scan-handheld" --events "$root/slow" --learn "$root/profile-$minutes" >"$root/said-$minutes" 2>&1 || fail "nothing was learned: $(cat "$root/said-$minutes")"
done
grep -q '"code":"learned"' "$root/said-1" || fail "a slow pass teaches nothing: $(cat "$root/said-1")"
grep -q '"code":"uncertain".*"uncertain":"undecided: ' "$root/said-2" || fail "the check goes on behind its two minutes: $(cat "$root/said-2")"
echo 'ok a check is over after two minutes, whatever is read'
