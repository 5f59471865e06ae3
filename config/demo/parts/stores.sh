# shellcheck shell=sh
# At the stores bench, before the first case: a box is received, its packs are labelled, each label is read back from its
# picture, and one pack goes to the theatre.

# a_box_comes_in EXPIRY: its code stands on the box, of which the demo has none: it is typed, and so is how many.
a_box_comes_in() {
	heading 'Stores: a box comes in'
	room=9
	card badges CIRC-2 accepted 'CIRC-2 works at this bench.'
	asks scan --room 9 "(01)09506000134352(17)$(printf %s "$1" | tr -d - | cut -c 3-)(10)T26" >/dev/null || true
	must scan --room 9 4
	room=1
}

# labels_read_back FIRST LAST: each from its picture; the box again closes them; the first pack is issued to Theatre 1.
labels_read_back() {
	heading 'Stores: each label is read back'
	room=9
	number=$1
	while [ "$number" -le "$2" ]; do
		pack green "$number" "$([ "$number" = "$2" ] && echo question || echo accepted)" '*'
		number=$((number + 1))
	done
	must scan --room 9 GREEN-M >/dev/null
	card stores 'TO ROOM 1' question 'Issue to Theatre 1*'
	pack green "$1" accepted 'Issued to Theatre 1: 1 pack of finger tourniquet, green, M, lot T26*'
	card stores DONE accepted 'Done.'
	must stock list
	room=1
}
