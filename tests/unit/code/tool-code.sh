#!/bin/sh
# `bandtally code` as somebody in stores uses it. $1 is the program.
set -u
code=$1
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
wrong=0

# expect EXIT 'text that stdout or stderr has' arguments...
expect() {
	should=$1 text=$2
	shift 2
	out=$("$code" "$@" 2>&1)
	is=$?
	if [ "$is" -ne "$should" ] || ! printf '%s' "$out" | grep -qF -- "$text"; then
		echo "FAILED: $*: exit $is (should be $should), no '$text' in: $out"
		wrong=1
	fi
}

expect 0 '(17)    USE BY or EXPIRY      2027-03-31' '(01)09506000134352(17)270300'
expect 0 '(21)    SERIAL                S1' ']d2010950600013435210ABC<GS>21S1'
expect 0 '(21)    SERIAL                S1' ']d2010950600013435210ABC\x1d21S1'
expect 0 'card: OFF, room 1, site BC' BTBC10104051
expect 0 'half of a pair' '(10)ABC'
expect 0 '[not kept]' '(8018)061414112345678902'
expect 1 'bandtally: this code is wrong at character 18: (01) GTIN, the check digit is 1 and should be 2: scan it' '(01)09506000134351'
expect 1 '                   ^' '(01)09506000134351'
# The caret counts what was typed: an escape is four characters.
expect 1 'at character 30' ']d2010950600013435210A\x1d21B C'
expect 0 'usage: bandtally code TEXT' --help
expect 2 'a TEXT or --file is missing'
expect 2 'no such option' --nonsense
expect 2 'not both' --file x y
expect 2 'one TEXT at a time' a b
expect 2 'needs the name of a file' --file
expect 1 'No such file' --file "$folder/absent"
expect 0 '"plain":"-12"' --json -- -12
expect 1 '"ok":false' --json '(01)1'

# A line each, whatever the lines hold: 5 kB, NUL, nothing, bytes that are no text, an end without a newline.
{
	head -c 5000 /dev/zero | tr '\0' A
	printf '\nAB\0CD\n\n\377\376\n]d20109506000134352\r\nlast'
} > "$folder/lines"
lines=$("$code" --file "$folder/lines" --json) || { echo "FAILED: --file --json does not end with 0"; wrong=1; }
[ "$(printf '%s\n' "$lines" | wc -l)" -eq 6 ] || { echo "FAILED: not one answer a line: $lines"; wrong=1; }
[ "$(printf '%s\n' "$lines" | cut -d'"' -f2-4 | grep -c 'at":')" -eq 4 ] || { echo "FAILED: $lines"; wrong=1; }
exit $wrong
