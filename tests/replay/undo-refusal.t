# A refusal is no step: UNDO takes back the one before it.
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
> pack GREEN-M 410 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:410 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> unknown 12345
refused: Not in the catalogue: 12345. Not counted. Use a listed item, or NO CODE to count it; a tourniquet that is on: UNLISTED TOURNIQUET.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "Not in the catalogue: 12345. Not counted. Use a listed item, or NO CODE to count it; a tourniquet that is on: UNLISTED TOURNIQUET."
> card UNDO
accepted: Taken back: counted in, finger tourniquet, green, M. The record keeps both.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: undone, case 1, ref item-in 2 before, first
> show
