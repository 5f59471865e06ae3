# THIS ROOM shows what is next in the room that the scanner works for now.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 1
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2", first

room 2
> card NEW CASE
accepted: Theatre 2: Case 2 opened in Theatre 2.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 2
> badge SCRUB-5
accepted: Theatre 2: SCRUB-5: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 2, field, person SCRUB-5, "SCRUB-5", first

room 1
> card THIS ROOM of room 2
accepted: This scanner now works for Theatre 2.
next: Who circulates: scan the circulating badge.
  event: scanner-room, for a while, n 2, "hand-1"
