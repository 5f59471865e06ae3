# A refusal is no step: UNDO takes back the one before it.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
  event: case-opened, case 1
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2", first
> pack GREEN-M 410 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: item-in, case 1, item 1, GREEN-M:410 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> unknown 12345
refused: Not in the catalogue: 12345. Not counted. Use a listed item; if it is already on the digit, scan UNLISTED TOURNIQUET.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: refused, case 1, "Not in the catalogue: 12345. Not counted. Use a listed item; if it is already on the digit, scan UNLISTED TOURNIQUET."
> card UNDO
accepted: Taken back: item in, finger tourniquet, green, M. The record keeps both.
next: Scan each pack and instrument as it is counted in.
  event: undone, case 1, ref item-in 2 before, first
> show
