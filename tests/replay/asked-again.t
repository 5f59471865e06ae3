# What is on a patient is asked until it is answered: another scan in between brings the question back, and NO pays it. A
# refusal brings nothing back.
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
> pack GREEN-M 380 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:380 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> digit right thumb
question: Right thumb: the clock runs as 'on?'.
next: Right thumb: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: digit-maybe-on, case 1, digit right thumb, first
  event: owed, case 1, maybe-on, digit right thumb
  event: asked, case 1, is-on, digit right thumb, n 1
> pack FORCEPS 39
accepted: Counted in: 1 artery forceps, curved.
next: Right thumb: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: item-in, case 1, item 2, FORCEPS:39 "artery forceps, curved" forceps known by its mark, n 1, first
> unknown 12345
refused: Not in the catalogue: 12345. Not counted. Use a listed item, or NO CODE to count it; a tourniquet that is on: UNLISTED TOURNIQUET.
next: Right thumb: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: refused, case 1, "Not in the catalogue: 12345. Not counted. Use a listed item, or NO CODE to count it; a tourniquet that is on: UNLISTED TOURNIQUET."
> card NO
accepted: Marked digit: right thumb.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: digit-not-on, case 1, digit right thumb, first
  event: paid, case 1, maybe-on, digit right thumb, not-on
  event: asked, case 1, nothing more
  event: digit-marked, case 1, digit right thumb
> show
item 1: finger tourniquet, green, M, here, 0 of 1
item 2: artery forceps, curved, here, 0 of 1
right thumb: bare, marked, now 0 min, total 0 min, longest 0 min
