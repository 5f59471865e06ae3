# MISREAD and a pack strikes what was never here. After the count that is agreed anew; what is being counted or is missing
# cannot be struck, and what was struck may be scanned rightly (rules 1 and 13).
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
> pack GREEN-M 230 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:230 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack SWAB-5 lot S1
accepted: Counted in: 5 × swab, small (lot S1).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, SWAB-5 "swab, small" other lot S1 single-use, n 5, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card MISREAD
question: Misread.
next: What was misread? Scan the pack; NO to leave it as it is.
  event: asked, case 1, move-to, first
> pack SWAB-5 lot S1
accepted: Struck as a misread: swab, small. The record keeps it.
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: item-struck, case 1, item 2, first
  event: owed, case 1, added
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, green, M, here, 0 of 1
item 2: swab, small, struck, 0 of 5
owed: added
> badge CIRC-2
accepted: What was added agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, added, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: paid, case 1, added, person CIRC-2, agreed-aloud
> card ADD
question: Adding.
next: What is added? Scan the pack; NO to leave it as it is.
  event: asked, case 1, add, first
> pack SWAB-5 lot S1
accepted: Added: 5 × swab, small (lot S1).
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: item-in, case 1, item 3, SWAB-5 "swab, small" other lot S1 single-use, n 5, first
  event: owed, case 1, added
  event: asked, case 1, nothing more
> badge CIRC-2
accepted: What was added agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, added, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: paid, case 1, added, person CIRC-2, agreed-aloud
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 1, digit right thumb
> digit right thumb
question: Tourniquet on the right thumb for 0 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right thumb
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card MISREAD
question: Misread: the right thumb, or a pack.
next: Right thumb: What was misread? Scan the card of the digit that it is really on; YES if no tourniquet went on at all; NO to leave it as it is.
  event: asked, case 1, move-to, digit right thumb, first
> pack SWAB-5 lot S1
refused: That item was used, is being counted or is not on the sheet: it cannot be struck as a misread.
next: Right thumb: What was misread? Scan the card of the digit that it is really on; YES if no tourniquet went on at all; NO to leave it as it is.
  event: refused, case 1, "That item was used, is being counted or is not on the sheet: it cannot be struck as a misread."
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Lay 5 × swab, small side by side: scan SHOWN 5 if all are there; SHOWN and their number for as many as are; NO if none is there.
  event: asked, case 1, nothing more, first
  event: item-shown, case 1, shown, item 1, intact, n 1
> card NO
accepted: NOT THERE: swab, small, 0 of 5. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: item-not-shown, case 1, item 3, n 5, first
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 1, "en"
prints: discrepancy slip 1
  event: slip-state, case 1, written, copy 1, n 1
> digit right thumb
question: Right thumb: the clock runs as 'on?'.
next: Right thumb: Is a tourniquet on it now? Scan YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: digit-doubted, case 1, digit right thumb, first
  event: owed, case 1, maybe-on, digit right thumb
  event: asked, case 1, is-on, digit right thumb, n 1
> card YES
accepted: Tourniquet on, right thumb, from 10:01; no forceps on it. The clock runs. It is taken for the finger tourniquet, green, M that was shown: if that one lies there as well, this is another: scan its pack; UNLISTED TOURNIQUET if there is none. The final count starts again.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: paid, case 1, maybe-on, digit right thumb, is-on, first
  event: digit-on, case 1, digit right thumb
  event: item-on, case 1, item 1, digit right thumb
  event: asked, case 1, nothing more
> digit right thumb
question: Tourniquet on the right thumb for 0 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:01, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right thumb
> card MISREAD
question: Misread: the right thumb, or a pack.
next: Right thumb: What was misread? Scan the card of the digit that it is really on; YES if no tourniquet went on at all; NO to leave it as it is.
  event: asked, case 1, move-to, digit right thumb, first
> pack SWAB-5 lot S1
refused: That item was used, is being counted or is not on the sheet: it cannot be struck as a misread.
next: Right thumb: What was misread? Scan the card of the digit that it is really on; YES if no tourniquet went on at all; NO to leave it as it is.
  event: refused, case 1, "That item was used, is being counted or is not on the sheet: it cannot be struck as a misread."
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: swab, small, struck, 0 of 5
item 3: swab, small, here, 0 of 5
right thumb: off, now 0 min, total 0 min, longest 0 min
