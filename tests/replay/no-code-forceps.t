# What has no code and is no tourniquet is another item, and clamps nothing.
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
> pack GREEN-M 360 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:360 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> card NO CODE
question: An item without a code.
next: Is it a finger or toe tourniquet? Scan YES; NO if not.
  event: asked, case 1, no-code, first
> card NO
accepted: Counted in: item without a code, described on paper. Say aloud what it is and write it on the paper sheet.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: asked, case 1, nothing more, first
  event: item-in, case 1, item 2, no line "item without a code, described on paper" other unlisted, n 1
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 1, digit right thumb
