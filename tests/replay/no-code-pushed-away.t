# NO CODE and WRONG NUMBER IN PACK that another scan pushes away are not lost without a word.
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
> pack GREEN-M 201 lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:201 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card NO CODE
question: An item without a code.
next: Is it a finger or toe tourniquet? Scan YES; NO if not.
  event: asked, case 1, no-code, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs. NO CODE is not entered: scan it again after this.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
  event: asked, case 1, nothing more
> card NO CODE
question: An item without a code.
next: Is it a finger or toe tourniquet? Scan YES; NO if not.
  event: asked, case 1, no-code, first
> card NO
accepted: Counted in: item without a code, described on paper. Say aloud what it is and write it on the paper sheet.
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: asked, case 1, nothing more, first
  event: item-in, case 1, item 2, no line "item without a code, described on paper" other unlisted, n 1
  event: owed, case 1, added
> card WRONG NUMBER IN PACK
question: Wrong number in the pack.
next: Do not top it up. Which pack is it? Scan the pack; NO to leave it as it is.
  event: asked, case 1, isolate, first
> card ADD
question: Adding. WRONG NUMBER IN PACK is not entered: scan it again after this.
next: What is added? Scan the pack; NO to leave it as it is.
  event: asked, case 1, add, first
> card NO
accepted: Left as it is.
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: asked, case 1, nothing more, first
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: item without a code, described on paper, here, 0 of 1
right index finger: on, now 0 min, total 0 min, longest 0 min
owed: added
