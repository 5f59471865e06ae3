# shellcheck shell=sh
# From paper to code: a printed page becomes a picture, and the camera reads the picture. Nothing here knows what
# a code says before the camera has read it.

dots_per_inch=300

# mm_box LEFT UP WIDTH HEIGHT: a picture of WIDTH by HEIGHT mm that begins LEFT mm before and UP mm above the words
# on stdin ("page left top right bottom", in points). With LEFT 'middle' the words stand in its middle. Prints it as
# pdftoppm wants it: "page x y width height" in dots.
mm_box() {
	awk -v l="$1" -v u="$2" -v w="$3" -v h="$4" -v dpi=$dots_per_inch '
		{ x = l == "middle" ? ($2 + $4) / 144 - w / 50.8 : $2 / 72 - l / 25.4
		  y = $3 / 72 - u / 25.4
		  printf "%d %d %d %d %d\n", $1, (x < 0 ? 0 : x * dpi), (y < 0 ? 0 : y * dpi), w / 25.4 * dpi, h / 25.4 * dpi }'
}

next_picture() {
	pictures=$((pictures + 1))
	picture=$folder/pictures/$(printf %03d $pictures)
}

# look_at SHEET WORDS: takes a picture of the card that bears these words, as a hand holds it before the camera. The
# picture is as large as such a card is; where on the sheet it stands is found by its words.
look_at() {
	case $1 in
	cards | stores) box='9 2 92 40' ;;
	digits) box='middle 1 50 86' ;;
	badges) box='4 3 84 34' ;;
	esac
	# shellcheck disable=SC2086
	places=$(pdftotext -bbox "$folder/paper/$1.pdf" - | awk -v want="$2" -f "$parts/find-words.awk" | mm_box $box)
	[ "$(printf '%s\n' "$places" | grep -c .)" = 1 ] ||
		surprise "the sheet $1.pdf bears the words '$2' $(printf '%s\n' "$places" | grep -c .) times: they must stand there once"
	# shellcheck disable=SC2086
	set -- $places
	next_picture
	pdftoppm -r $dots_per_inch -gray -png -singlefile -f "$1" -l "$1" -x "$2" -y "$3" -W "$4" -H "$5" \
		"$folder/paper/$sheet.pdf" "$picture" || surprise "pdftoppm could not draw $sheet.pdf"
	picture=$picture.png
}

# look_at_label FILE NUMBER: takes a picture of the pack label with this item number, a page of its own.
look_at_label() {
	page=$(pdftotext "$folder/paper/$1.pdf" - | awk -v RS='\f' -v number="$2" '$0 ~ "no[.][^0-9]*" number "\n" { print NR; exit }')
	[ -n "$page" ] || surprise "$1.pdf bears no label with number $2"
	whole_page "$folder/paper/$1.pdf" "$page"
}

# whole_page PDF PAGE
whole_page() {
	next_picture
	pdftoppm -r $dots_per_inch -gray -png -singlefile -f "$2" -l "$2" "$1" "$picture" ||
		surprise "pdftoppm could not draw page $2 of $1"
	picture=$picture.png
}

# The camera's lines for the last picture, into $seen.
camera_looks() {
	seen=$("$bin/scan-camera" --image "$picture" 2>>"$folder/camera.log") || surprise "the camera cannot read $picture"
}

# The camera's line whose data begin with $1, into $lines: one code, or a surprise (a tall code may be told more than
# once). $data is what was read, $aim how the camera names the symbol.
take() {
	lines=$(printf '%s\n' "$seen" | grep "\"data\":\"$1" | sort -u) || lines=
	[ "$(printf '%s\n' "$lines" | grep -c '"scan"')" = 1 ] ||
		surprise "the camera read $(printf '%s\n' "$lines" | grep -c '"scan"') codes '$1…' instead of one in $picture"
	data=$(printf '%s\n' "$lines" | sed -n 's/.*"data":"\([^"]*\)".*/\1/p')
	aim=$(printf '%s\n' "$lines" | sed -n 's/.*"aim":"\([^"]*\)".*/\1/p')
}

# turn_pages PDF START: the camera looks at one page after the other, the last first (a slip has its codes at the
# end), until it finds a code that begins with START.
turn_pages() {
	for page in $(seq "$(pdfinfo "$1" | awk '/^Pages:/ { print $2 }')" -1 1); do
		whole_page "$1" "$page"
		camera_looks
		case $seen in *"\"data\":\"$2"*) return 0 ;; esac
	done
}
