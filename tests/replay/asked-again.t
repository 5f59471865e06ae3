# What is on a patient is asked until it is answered: another scan in between brings the question back, and NO pays it. A
# refusal brings nothing back.
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
> pack GREEN-M 380 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: item-in, case 1, item 1, GREEN-M:380 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> digit right thumb
question: Right thumb.
next: Right thumb: Is a tourniquet on it now? Scan YES or NO.
  event: digit-maybe-on, case 1, digit right thumb, first
  event: owed, case 1, maybe-on, digit right thumb
  event: asked, case 1, is-on, digit right thumb, n 1
> pack FORCEPS 39
accepted: Counted in: 1 artery forceps, curved.
next: Right thumb: Is a tourniquet on it now? Scan YES or NO.
  event: item-in, case 1, item 2, FORCEPS:39 "artery forceps, curved" forceps known by its mark, n 1, first
  event: asked, case 1, nothing more
  event: asked, case 1, is-on, digit right thumb, n 1
> unknown 12345
refused: Not in the catalogue: 12345. Not counted. Use a listed item; if it is already on the digit, scan UNLISTED TOURNIQUET.
next: Right thumb: Is a tourniquet on it now? Scan YES or NO.
  event: refused, case 1, "Not in the catalogue: 12345. Not counted. Use a listed item; if it is already on the digit, scan UNLISTED TOURNIQUET."
> card NO
accepted: Marked digit: right thumb.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: digit-not-on, case 1, digit right thumb, first
  event: paid, case 1, maybe-on, digit right thumb, "not on"
  event: asked, case 1, nothing more
  event: digit-marked, case 1, digit right thumb
> show
item 1: finger tourniquet, green, M, here, 0 of 1
item 2: artery forceps, curved, here, 0 of 1
right thumb: bare, marked, now 0 min, total 0 min, longest 0 min
