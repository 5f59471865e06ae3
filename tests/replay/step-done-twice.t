# STEP DONE read twice answers one step of the search; so do SUSPEND and MINUTES AGO what they say once.
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
> pack GREEN-M 506 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:506 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack FORCEPS 51
accepted: Counted in: 1 artery forceps, curved.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, FORCEPS:51 "artery forceps, curved" forceps known by its mark, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 1, digit right thumb
  event: forceps-on, case 1, item 2, digit right thumb
> card 5 MINUTES AGO
accepted: On 5 min earlier, right thumb.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-earlier, case 1, on, digit right thumb, n 5, first
>> card 5 MINUTES AGO
accepted: Read twice, entered once: 5 MINUTES AGO.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
> card SUSPEND
accepted: Case 1 is suspended. A TOURNIQUET IS ON: right thumb. Clocks and reminders go on.
next: Case 1 is suspended: scan NEXT, then SUSPEND to go on with it; NEW CASE for the next patient.
  event: suspended, case 1, first
>> card SUSPEND
accepted: Read twice, entered once: SUSPEND.
next: Case 1 is suspended: scan NEXT, then SUSPEND to go on with it; NEW CASE for the next patient.
+ 10 s
> card SUSPEND
accepted: Entered once already: SUSPEND. If it is meant again: NEXT, then this.
next: Case 1 is suspended: scan NEXT, then SUSPEND to go on with it; NEW CASE for the next patient.
> card NEXT
accepted: Next.
next: Case 1 is suspended: scan SUSPEND to go on with it; NEW CASE for the next patient.
  event: next
> card SUSPEND
accepted: Case 1 goes on.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: resumed, case 1, first
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: artery forceps, curved, on, 0 of 1
right thumb: on, now 5 min, total 5 min, longest 5 min
> digit right thumb
question: Tourniquet on the right thumb for 5 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:00, after 5 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
  event: forceps-moved, case 1, item 2
  event: digit-off, case 1, digit right thumb
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> card NO
accepted: NOT THERE: artery forceps, curved, 0 of 1. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: item-not-shown, case 1, item 2, n 1, first
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 1, "en"
prints: discrepancy slip 1
  event: slip-state, case 1, written, copy 1, n 1
> card STEP DONE
accepted: Search step 1 done: say it aloud and stop closing.
next: Search 2 of 11: count again: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand.
  event: search-step, case 1, done, n 1, "say it aloud and stop closing", first
>> card STEP DONE
accepted: Read twice, entered once: STEP DONE.
next: Search 2 of 11: count again: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand.
+ 1 min
> card STEP DONE
accepted: Entered once already: STEP DONE. If it is meant again: NEXT, then this.
next: Search 2 of 11: count again: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand.
> card NEXT
accepted: Next.
next: Search 2 of 11: count again: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: next, case 1
> card STEP DONE
accepted: Search step 2 done: count again.
next: Search 3 of 11: look at and feel the digit, under the dressing too: scan its digit card or NOT DONE; FOUND when what is missing is in your hand.
  event: search-step, case 1, done, n 2, "count again", first
