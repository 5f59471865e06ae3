# The step of the search that looks at the digit finds the tourniquet that was missing there: it never came off.
begins from tourniquet-missing
> card STEP DONE
accepted: Search step 1 done: say it aloud and stop closing.
next: Search 2 of 11: count again: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, done, n 1, "say it aloud and stop closing", first
> card NEXT
accepted: Next.
next: Search 2 of 11: count again: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card STEP DONE
accepted: Search step 2 done: count again.
next: Search 3 of 11: look at and feel the digit, under the dressing too: scan its digit card or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, done, n 2, "count again", first
> digit right thumb
question: Right thumb: the clock runs as 'on?'. Look at it and feel it, under the dressing too.
next: Right thumb: Is a tourniquet on it now? Scan YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: digit-doubted, case 1, digit right thumb, first
  event: owed, case 1, maybe-on, digit right thumb
  event: asked, case 1, is-on, digit right thumb, n 1
> card MISREAD
accepted: OFF taken back: the tourniquet is still on the right thumb, for 0 min. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-still-on, case 1, digit right thumb, first
  event: item-on, case 1, item 1, digit right thumb
  event: paid, case 1, maybe-on, digit right thumb, never-off
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: artery forceps, curved, accounted, 1 of 1
right thumb: on, now 0 min, total 0 min, longest 0 min
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
> card FINAL COUNT
accepted: Counting again, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> pack FORCEPS 53
accepted: Accounted for: artery forceps, curved: its mark was read, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, mark, item 2, n 1, first
  event: discrepancy, case 1
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right thumb before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Right thumb seen bare at 10:01.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not; VISITOR 1 for a visitor without a badge.
  event: digit-seen-bare, case 1, digit right thumb, person CIRC-2, first
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact. Artery forceps, curved: 1 of 1, mark read. Seen bare: right thumb.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: signed-out, case 1, person SURG-3
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, GREEN-M:519 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: item-used, case 1, item 2, FORCEPS:53 "artery forceps, curved" forceps known by its mark, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 2, "en"
prints: reconciliation slip 2
  event: slip-state, case 1, written, copy 1, n 2
