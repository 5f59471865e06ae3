# shellcheck shell=sh
# What the demo ends with: the record checked, what was played, where the papers are.

check_record() {
	heading 'The record'
	out=$(must audit verify)
	echo "$out" | sed 's/^/    /'
	events=$(echo "$out" | awk 'NR == 1 { print $1 }')
	must case list | sed 's/^/    /'
	[ "$(asks case list | grep -c '^reconciled ')" = 2 ] || surprise 'not both cases ended reconciled'
	asks print list | grep -q . && surprise "a slip was not seen: $(asks print list)"
	[ "$(ls "$folder/slips" | wc -l)" = 3 ] || surprise "there are $(ls "$folder/slips" | wc -l) slips instead of 3"
}

# A report of half a year, which the count itself went through case by case, in its own folder: none of it ever was.
half_year() {
	[ -x "${half_year:=$bin/../tests/half-year}" ] || return 0
	heading 'A report of half a year of an invented hospital'
	mkdir "$folder/half-year"
	"$half_year" "$folder/half-year" 5 >"$folder/half-year/said" || surprise 'the half year could not be played'
	sed 's/^/    /' "$folder/half-year/said"
	report=$folder/half-year/report.pdf
	XDG_DATA_HOME=$folder/half-year "$bin/bandtally" --data "$folder/half-year" audit report --from 2026-11-30 --to 2027-05-30 --summary none \
		--list "$folder/half-year/list.csv" --pdf "$report" 2>"$folder/half-year/took" || surprise 'there is no report'
	sed 's/^/    /' "$folder/half-year/took"
	pdftotext -layout "$report" - | grep -q 'Cases between those with a discrepancy' || surprise 'the report has no chart'
	echo "    $report"
}

check_board() {
	[ -x "$bin/bandtally-board" ] || return 0
	until_true 10 grep -q 'the board is at ' "$folder/station.log" || surprise 'the board did not start'
	board=$(must board --room 1)
	case $board in http://127.0.0.1:*/ticket/?*) ;; *) surprise "'$board' is no address with a ticket" ;; esac
}

# The copy of the record that a stopped station leaves must verify as well, and nothing of ours may still run.
check_end() {
	stop_station || surprise "the station ended with exit code $ended"
	[ ! -e "$folder/socket" ] || surprise 'the station left its socket behind'
	"$bin/bandtally" --data "$folder" audit verify >/dev/null || surprise 'the record does not verify after the end'
}

summary() {
	heading 'Done'
	cat <<-END
		    $scans scans, each read from a picture of the paper; $pictures pictures
		    2 cases: one reconciled at once, one after a discrepancy that was searched and found
		    printed: 6 pack and 6 return bag labels, $(pages_of digits) digit sheets, $(pages_of cards) card sheets, $(pages_of badges) badge sheet, 3 slips
		    $events events in the record, verified; $signatures slip signatures read from paper, verified
		    slips:    $folder/slips
		    labels:   $folder/paper
		    pictures: $folder/pictures
	END
	[ -z "${report:-}" ] || echo "    report:   $report"
}
pages_of() { pdfinfo "$folder/paper/$1.pdf" | awk '/^Pages:/ { print $2 }'; }
