#!/bin/sh
# The committed table of GS1 identifiers is what make-gs1-table makes of the dictionary.
# BANDTALLY_SOURCE: the project; the dictionary lies beside it or under BANDTALLY_SHARED.
set -eu
code="$BANDTALLY_SOURCE/station/code"
dictionary="${BANDTALLY_SHARED:-$BANDTALLY_SOURCE/../shared}/data/gs1/gs1-syntax-dictionary.txt"
if [ ! -f "$dictionary" ]; then
	echo "skipped: $dictionary is not there; set BANDTALLY_SHARED to the folder that holds data/"
	exit 77
fi
made=$(mktemp)
trap 'rm -f "$made"' EXIT
"$code/make-gs1-table" "$dictionary" > "$made"
diff -u "$code/gs1-table.inc" "$made"
echo "$(grep -c '^AI(' "$made") rows agree"
# A dictionary with a rule that is new must stop the script, not vanish.
if echo '88 X..20,newrule # NEW' | "$code/make-gs1-table" /dev/stdin > /dev/null 2>&1; then
	echo "an unknown rule was passed over"
	exit 1
fi
