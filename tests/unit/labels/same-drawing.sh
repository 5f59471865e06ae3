#!/bin/sh
# The digit cards show the hand and the foot that the board draws: each number and path of the one stands in the other.
#   same-drawing.sh SOURCE
set -eu
paper=$1/labels/hands.c page=$1/station/board/page/figure.js
paths=$(sed -n "s/^const \(palm\|sole\) = '\(.*\)';.*/\2/p" "$page")
[ "$(printf '%s\n' "$paths" | grep -c .)" = 2 ] || { echo "no palm and sole in $page"; exit 1; }
printf '%s\n' "$paths" | while read -r path; do
	grep -qF "\"$path\"" "$paper" || { echo "the paper's drawing has not the board's path $path"; exit 1; }
done
# Ten digits: [40, 98, 11, 63, 16.5] of the one, {40, 98, 11, 63, 16.5} of the other.
digits() { grep -oE '[[{]([0-9.]+, ){4}[0-9.]+[]}]' "$1" | tr '[]{}' '    ' | tr -d ' '; }
[ "$(digits "$page" | wc -l)" = 10 ] || { echo "no ten digits in $page"; exit 1; }
[ "$(digits "$page")" = "$(digits "$paper")" ] || { echo "the digits of the paper's drawing are not the board's"; exit 1; }
echo 'two bodies and ten digits, alike on paper and board'
