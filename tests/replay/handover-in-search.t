# STEP DONE while a handover goes on in a search: no step that the board does not show is answered.
room 3
> badge SURG-3
accepted: Case 1 opened in Minor injuries. SURG-3 works alone: single-person count.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: case-opened, case 1, n 1
  event: joined, case 1, field, person SURG-3, "SURG-3"
> pack GREEN-M 815 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: When the tourniquet goes on, before gloving: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: item-in, case 1, item 1, GREEN-M:815 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> digit left thumb
accepted: Tourniquet on, left thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit left thumb, first
  event: item-on, case 1, item 1, digit left thumb
  event: count-agreed, case 1, initial, person SURG-3, n SURG-3
> card OFF
accepted: Off, left thumb, at 10:00, after 0 min. Off is not yet accounted for.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: item-off, case 1, item 1, digit left thumb, first
  event: digit-off, case 1, digit left thumb
  event: count-started, case 1, final
> card NO
accepted: NOT THERE: finger tourniquet, green, M, 0 of 1. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: item-not-shown, case 1, item 1, n 1, first
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 1, "en"
prints: discrepancy slip 1
  event: slip-state, case 1, written, copy 1, n 1
> card STEP DONE
accepted: Search step 1 done: say it aloud and stop closing.
next: Search 2 of 11: count again: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, done, n 1, "say it aloud and stop closing", first
> card HANDOVER
question: Handover.
next: Who hands over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-out, first
> badge SURG-3
question: SURG-3 hands over (at the field).
next: Who takes over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-in, person SURG-3, first
> badge SCRUB-1
question: SCRUB-1 takes over from SURG-3, at the field.
next: Count aloud together what is on the sheet: scan NEXT, then the operator's badge.
  event: left, case 1, field, person SURG-3, first
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1"
  event: count-started, case 1, handover
  event: owed, case 1, handover
  event: asked, case 1, handover-agree, person SURG-3, n 1
> badge SCRUB-1
accepted: Entered once already: SCRUB-1. If it is meant again: NEXT, then this.
next: Count aloud together what is on the sheet: scan NEXT, then the operator's badge.
> card STEP DONE
refused: A handover goes on: first finish it, then this step of the search.
next: Count aloud together what is on the sheet: scan NEXT, then the operator's badge.
  event: refused, case 1, "A handover goes on: first finish it, then this step of the search."
> card NEXT
accepted: Next.
next: Count aloud together what is on the sheet: scan the operator's badge.
  event: next, case 1
> card STEP DONE
refused: A handover goes on: first finish it, then this step of the search.
next: Count aloud together what is on the sheet: scan the operator's badge.
  event: refused, case 1, "A handover goes on: first finish it, then this step of the search."
> card FOUND
question: Found.
next: Found: is it the finger tourniquet, green, M? Scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is something else.
  event: asked, case 1, found, item 1, first
> card INTACT
accepted: Found, finger tourniquet, green, M: shown intact, 1 of 1.
next: Look at the bare left thumb before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: asked, case 1, nothing more, first
  event: item-shown, case 1, shown, item 1, intact, n 1, "count again"
  event: discrepancy, case 1
  event: count-agreed, case 1, final, person SCRUB-1, n SCRUB-1
> digit left thumb
question: Left thumb seen bare at 10:00.
next: Who else looked at the bare digit? Scan PATIENT, CARER, COLLEAGUE or NOBODY.
  event: digit-seen-bare, case 1, digit left thumb, person SCRUB-1, first
  event: asked, case 1, who-looked
> card WHO LOOKED: COLLEAGUE
accepted: Looked at the bare digit as well: a colleague.
next: Still to do: the handover count: scan the operator's badge when it was counted aloud.
  event: who-looked, case 1, colleague, first
  event: asked, case 1, nothing more
> badge SCRUB-1
accepted: SCRUB-1 counted: the handover count, single-person count.
next: Read the sign-out points aloud: scan NEXT, then the operator's badge if all are true; NO if one is not.
  event: count-agreed, case 1, handover, person SCRUB-1, n SCRUB-1, first
  event: paid, case 1, handover, person SCRUB-1, by-operator
> badge SURG-3
refused: This count is single-person, by SCRUB-1. WHO LOOKED names who else looked. If SURG-3 takes over, scan HANDOVER, then this badge.
next: Read the sign-out points aloud: scan NEXT, then the operator's badge if all are true; NO if one is not.
  event: refused, case 1, "This count is single-person, by SCRUB-1. WHO LOOKED names who else looked. If SURG-3 takes over, scan HANDOVER, then this badge."
> show
item 1: finger tourniquet, green, M, accounted, 1 of 1
left thumb: off, now 0 min, total 0 min, longest 0 min, seen bare
