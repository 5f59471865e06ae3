# Of a pack of five four are there: its wrapper neither goes back unopened nor is isolated, whatever is scanned. The needle that
# was looked for neither.
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
> pack NEEDLE
accepted: Counted in: 1 needle.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 3, NEEDLE "needle" other single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
> digit right index finger
question: Tourniquet on the right index finger for 0 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Lay 5 × swab, small side by side: scan SHOWN 5 if all are there; SHOWN and their number for as many as are; NO if none is there.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> card SHOWN 4
accepted: Swab, small: 4 of 5 shown.
next: Show the needle: scan YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, shown, item 2, n 4, first
> card NO
accepted: NOT THERE: needle, 0 of 1. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: item-not-shown, case 1, item 3, n 1, first
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 1, "en"
prints: discrepancy slip 1
  event: slip-state, case 1, written, copy 1, n 1
> card RETURNED UNOPENED
question: Returned unopened.
next: What goes back unopened? Scan the pack; NO to leave it as it is.
  event: asked, case 1, returned, first
> pack SWAB-5
refused: Swab, small was shown in part or looked for in this case: its pack is not taken for unopened. Show what is in your hand as it is asked for; in a search: FOUND.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: refused, case 1, "Swab, small was shown in part or looked for in this case: its pack is not taken for unopened. Show what is in your hand as it is asked for; in a search: FOUND."
  event: asked, case 1, nothing more
> card WRONG NUMBER IN PACK
question: Wrong number in the pack.
next: Do not top it up. Which pack is it? Scan the pack; NO to leave it as it is.
  event: asked, case 1, isolate, first
> pack SWAB-5
refused: Swab, small was shown in part or looked for in this case: its pack is not taken for unopened. Show what is in your hand as it is asked for; in a search: FOUND.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: refused, case 1, "Swab, small was shown in part or looked for in this case: its pack is not taken for unopened. Show what is in your hand as it is asked for; in a search: FOUND."
  event: asked, case 1, nothing more
> card RETURNED UNOPENED
question: Returned unopened.
next: What goes back unopened? Scan the pack; NO to leave it as it is.
  event: asked, case 1, returned, first
> pack NEEDLE
refused: Needle was shown in part or looked for in this case: its pack is not taken for unopened. Show what is in your hand as it is asked for; in a search: FOUND.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: refused, case 1, "Needle was shown in part or looked for in this case: its pack is not taken for unopened. Show what is in your hand as it is asked for; in a search: FOUND."
  event: asked, case 1, nothing more
> card FOUND
question: Found.
next: Found: is it the swab, small? Scan YES when both have seen it; NO if it is something else.
  event: asked, case 1, found, item 2, first
> pack SWAB-5
refused: That is the wrapper: it proves that a pack was opened, not where the swab, small is. Show the item itself.
next: Found: is it the swab, small? Scan YES when both have seen it; NO if it is something else.
  event: refused, case 1, "That is the wrapper: it proves that a pack was opened, not where the swab, small is. Show the item itself."
> show
item 1: finger tourniquet, green, M, accounted, 1 of 1
item 2: swab, small, here, 4 of 5
item 3: needle, here, 0 of 1
right index finger: off, now 0 min, total 0 min, longest 0 min
> card NO
question: Found.
next: Found: is it the needle? Scan YES when both have seen it; NEXT, then NO if it is something else.
  event: asked, case 1, found, item 3, first
> card FINAL COUNT
accepted: Counting again, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: asked, case 1, nothing more, first
  event: count-started, case 1, final
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Lay 5 × swab, small side by side: scan SHOWN 5 if all are there; SHOWN and their number for as many as are; NO if none is there.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> card RETURNED UNOPENED
question: Returned unopened.
next: What goes back unopened? Scan the pack; NO to leave it as it is.
  event: asked, case 1, returned, first
> pack SWAB-5
refused: Swab, small was shown in part or looked for in this case: its pack is not taken for unopened. Show what is in your hand as it is asked for; in a search: FOUND.
next: Lay 5 × swab, small side by side: scan SHOWN 5 if all are there; SHOWN and their number for as many as are; NO if none is there.
  event: refused, case 1, "Swab, small was shown in part or looked for in this case: its pack is not taken for unopened. Show what is in your hand as it is asked for; in a search: FOUND."
  event: asked, case 1, nothing more
> card SHOWN 5
accepted: Accounted for: swab, small: shown to both, 5 of 5.
next: Show the needle: scan YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, shown, item 2, n 5, first
> card WRONG NUMBER IN PACK
question: Wrong number in the pack.
next: Do not top it up. Which pack is it? Scan the pack; NO to leave it as it is.
  event: asked, case 1, isolate, first
> pack NEEDLE
refused: Needle was shown in part or looked for in this case: its pack is not taken for unopened. Show what is in your hand as it is asked for; in a search: FOUND.
next: Show the needle: scan YES when both have seen it; NO if it is not there.
  event: refused, case 1, "Needle was shown in part or looked for in this case: its pack is not taken for unopened. Show what is in your hand as it is asked for; in a search: FOUND."
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, green, M, accounted, 1 of 1
item 2: swab, small, accounted, 5 of 5
item 3: needle, here, 0 of 1
right index finger: off, now 0 min, total 0 min, longest 0 min


