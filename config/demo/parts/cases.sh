# shellcheck shell=sh
# Two cases, scan by scan. Each scan: what is held before the camera, what the station must say to it.

# The pictures were read, so the lists that the station prints may tell what each code stands for.
meaning() { # SHEET
	case $1 in
	badges) asks label badges --list ;; # of no room
	*) asks label "$(echo "$1" | sed 's/stores/cards/')" --room "$room" --list ;;
	esac | awk -F '\t' -v code="$data" '$1 == code { print $3 }'
}

heading() {
	scan=0
	printf '\n%s%s%s\n' "$bold" "$*" "$plain"
}

tell_scan() {
	scans=$((scans + 1))
	printf '%2d  %s%s%s  %s(%s read as %s)%s\n' $((scan += 1)) "$bold" "$1" "$plain" "$faint" "$aim" "$(shorter "$data")" "$plain"
}
shorter() { if [ ${#1} -gt 34 ]; then printf '%.31s…' "$1"; else printf '%s' "$1"; fi; }

# card SHEET WORDS VERDICT PATTERN
card() {
	sheet=$1
	look_at "$1" "$2"
	camera_looks
	take BT
	[ "$(meaning "$1")" = "$2" ] || surprise "the card '$2' was read as '$(meaning "$1")' ($data)"
	tell_scan "$2"
	send "$3" "$4"
}

# pack FILE NUMBER VERDICT PATTERN
pack() {
	look_at_label "$1" "$2"
	camera_looks
	take 91P
	tell_scan "pack label $2"
	send "$3" "$4"
}

# Waits until a slip is on paper (a PDF, for the demo has no printer), then reads the paper.
# slip NUMBER CASE WORDS
slip() {
	pdf=$folder/slips/slip-$(printf %07d "$1")-copy-1.pdf
	until_true 20 slip_is_written "$1" || surprise "slip $1 was not written: $(asks print list | tail -n 1)"
	turn_pages "$pdf" BTHU4
	take BTHU4
	tell_scan "the code on the $3 slip"
	send accepted "Slip $(printf %07d "$1") of case $2, copy 1, seen*"
	signature_holds "$1"
}
slip_is_written() { asks print list | grep -Eq "^slip $(printf %07d "$1") .*(written as PDF|reported done)"; }

# The QR on the same page is the record's signed summary; the camera has read it with the slip's code.
signature_holds() {
	take eyJ
	summary=$(asks audit slip "$data") || surprise "the signature on slip $1 does not hold"
	printf '    %sits QR code, read from the paper: %s%s\n' "$faint" "$(printf '%s' "$summary" | cut -c 1-96)…" "$plain"
	signatures=$((signatures + 1))
}

counted_in() {
	card cards 'NEW CASE' accepted "Case $1 opened in Theatre 1."
	card badges SCRUB-1 accepted 'SCRUB-1: at the field.'
	card badges CIRC-2 accepted 'CIRC-2: circulating.'
	pack green "$2" accepted 'Counted in: 1 finger tourniquet, green, M*'
	pack forceps "$3" accepted 'Counted in: 1 artery forceps, curved*'
	card badges CIRC-2 accepted 'Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.'
}

# on_and_off DIGIT
on_and_off() {
	card digits "$1" accepted "Tourniquet on, $1, from *; forceps on it. The clock runs."
	sleep 2.2 # within two seconds the same code is the same read
	card digits "$1" question "Tourniquet on the $1 for *"
	card cards OFF accepted "Off, $1, at *Off is not yet accounted for."
}

# agreed_and_seen DIGIT CASE: the last three scans before the slip.
agreed_and_seen() {
	card badges CIRC-2 accepted 'Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.'
	card digits "$1" accepted '*seen bare at *'
	card badges SURG-3 accepted "Case $2 ended reconciled.*1 of 1 shown intact*"
}

ordinary_case() {
	heading 'Case 1, the ordinary case: one finger, one tourniquet, one forceps, two people'
	counted_in 1 "$green_1" "$forceps_1"
	on_and_off 'right index finger'
	card cards 'FINAL COUNT' accepted 'Final count, line by line.'
	card cards INTACT accepted 'Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.'
	card cards YES accepted 'Accounted for: artery forceps, curved: shown to both, 1 of 1.'
	agreed_and_seen 'right index finger' 1
	slip 1 1 reconciliation
	[ "$scan" = 16 ] || surprise "the ordinary case took $scan scans: it must take 16"
}

case_with_discrepancy() {
	heading 'Case 2: the forceps do not come back at first'
	counted_in 2 "$green_2" "$forceps_2"
	on_and_off 'left great (big) toe'
	card cards 'FINAL COUNT' accepted 'Final count, line by line.'
	card cards INTACT accepted 'Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.'
	pack forceps "$forceps_2" refused 'That is the wrapper: *'
	card cards NO accepted 'NOT THERE: artery forceps, curved, 0 of 1.*DISCREPANCY: say it aloud.*slip prints now.*'
	slip 2 2 discrepancy
	card cards 'STEP DONE' accepted 'Search step 1 done: *'
	card cards NEXT accepted 'Next.'
	card cards 'STEP DONE' accepted 'Search step 2 done: *'
	card digits 'left great (big) toe' question '*Look at it and feel it*'
	card cards NO accepted 'Search step 3 done: *'
	card cards FOUND question 'Found.*'
	card cards YES accepted 'Found, artery forceps, curved: shown to both, 1 of 1.*'
	agreed_and_seen 'left great (big) toe' 2
	slip 3 2 reconciliation
}
