# A pack that was counted in is said to hold the wrong number while the operation goes on: what is left is counted anew, aloud.
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
> pack SWAB-5
accepted: Counted in: 5 × swab, small.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, SWAB-5 "swab, small" other single-use, n 5, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
+ 2 min
  event: alive, 2 times
> card WRONG NUMBER IN PACK
question: Wrong number in the pack.
next: Do not top it up. Which pack is it? Scan the pack; NO to leave it as it is.
  event: asked, case 1, isolate, first
> pack SWAB-5
question: Swab, small: one is on the sheet.
next: Is the pack in your hand counted in already? Scan YES; NO if not.
  event: asked, case 1, counted-in, item 2, first
> card YES
accepted: Isolated, not in the count: swab, small. Still counted in: nothing of it. Keep the whole pack in the room, tell stores. If a piece of it is in use: UNDO, it stays in the count. Count aloud anew what is left.
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: item-isolated, case 1, item 2, first
  event: owed, case 1, added
  event: asked, case 1, nothing more
> badge CIRC-2
accepted: What was added agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: count-agreed, case 1, added, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: paid, case 1, added, person CIRC-2, agreed-aloud
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: swab, small, isolated, 0 of 5
right index finger: on, now 2 min, total 2 min, longest 2 min
