#!/bin/sh
# A tourniquet that is not there at the final count: the discrepancy slip comes at once and names the digit that it was
# on; found in the count begun again, the case ends, and its slip tells the whole story. Read from the PDFs.
#   missing.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
command -v pdftotext >/dev/null || skip 'pdftotext is not installed (poppler-utils)'
start
bt catalogue import "$source/config/catalogue.csv" >/dev/null
for who in 'practitioner SCRUB-1' 'practitioner CIRC-2' 'surgeon SURG-3'; do
	# shellcheck disable=SC2086
	bt staff add --registered $who >/dev/null
done
{
	bt label cards --list
	bt label digits --list
} >"$root/cards"
badges=$(bt label badges --list)
# scan WORDS: the card, digit or badge that says so; its answer must hold $2
scan() {
	code=$(awk -F '\t' -v w="$1" '$3 == w { print $1; exit }' "$root/cards")
	[ -n "$code" ] || code=$(echo "$badges" | awk -F '\t' -v w="$1" 'index($0, w) { print $1; exit }')
	[ -n "$code" ] || code=$1
	bt scan "$code" >"$root/said" 2>&1 || [ $? -eq 4 ] || fail "$1: $(cat "$root/said")"
	grep -q -- "$2" "$root/said" || fail "$1: no '$2' in: $(cat "$root/said")"
}
# slip NUMBER WORDS…: waits for the paper and looks for each of the words
slip() {
	pdf=$data/slips/slip-$(printf %07d "$1")-copy-1.pdf
	soon "slip $1 comes" '[ -s "$pdf" ]'
	pdftotext -layout "$pdf" - | tr -s ' \n' ' ' >"$root/text"
	shift
	for words; do
		grep -q -- "$words" "$root/text" || fail "no '$words' on the slip: $(cat "$root/text")"
	done
}
scan 'NEW CASE' 'Case 1 opened'
scan SCRUB-1 'at the field'
scan CIRC-2 circulating
scan '(01)09506000134352(17)280331(10)T26(21)S101' 'Counted in'
scan CIRC-2 'Initial count agreed'
scan 'right middle finger' 'Tourniquet on'
scan OFF 'Off, right middle finger'
scan 'FINAL COUNT' 'Final count'
scan NO 'DISCREPANCY'
slip 1 DISCREPANCY '0 of 1 shown May be on the right middle finger' 'Look at and feel the right middle finger now' 'look at and feel the digit'
scan 'FINAL COUNT' 'Counting again'
scan INTACT 'shown intact, 1 of 1'
scan CIRC-2 'Final count agreed'
scan 'right middle finger' 'seen bare'
scan SURG-3 'ended reconciled.*Seen bare: right middle finger'
slip 2 'After a discrepancy' 'seen bare' 'agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2'
echo 'the discrepancy slip names the digit, and the last slip tells of the discrepancy'
