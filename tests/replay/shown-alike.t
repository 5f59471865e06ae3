# Two tourniquets alike are laid side by side and answered once by their number: INTACT says nothing of the second (rule 22).
# One shown of two leaves a discrepancy whose slip names both digits.
begins from two-off
> card INTACT
refused: 2 are asked for together: lay them side by side, SHOWN and their number.
next: Lay 2 × finger tourniquet, green, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: refused, case 1, "2 are asked for together: lay them side by side, SHOWN and their number."
>> card INTACT
refused: 2 are asked for together: lay them side by side, SHOWN and their number.
next: Lay 2 × finger tourniquet, green, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: refused, case 1, "2 are asked for together: lay them side by side, SHOWN and their number."
> card YES
refused: 2 are asked for together: lay them side by side, SHOWN and their number.
next: Lay 2 × finger tourniquet, green, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: refused, case 1, "2 are asked for together: lay them side by side, SHOWN and their number."
> card SHOWN 1
accepted: Finger tourniquet, green, M: 1 of 2 shown. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
  event: item-not-shown, case 1, item 2, n 1
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 1, "en"
prints: discrepancy slip 1
  event: slip-state, case 1, written, copy 1, n 1
> show
item 1: finger tourniquet, green, M, accounted, 1 of 1
item 2: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now 0 min, total 0 min, longest 0 min
left ring finger: off, now 0 min, total 0 min, longest 0 min
> card FOUND
question: Found.
next: Found: is it the finger tourniquet, green, M? Scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is something else.
  event: asked, case 1, found, item 2, first
> card INTACT
accepted: Found, finger tourniquet, green, M: shown intact, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: asked, case 1, nothing more, first
  event: item-shown, case 1, shown, item 2, intact, n 1, "say it aloud and stop closing"
  event: discrepancy, case 1
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right index finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Right index finger seen bare at 10:01.
next: Look at the bare left ring finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: digit-seen-bare, case 1, digit right index finger, person CIRC-2, first
> digit left ring finger
accepted: Left ring finger seen bare at 10:01.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not; VISITOR 1 for a visitor without a badge.
  event: digit-seen-bare, case 1, digit left ring finger, person CIRC-2, first
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 2 of 2 shown intact. Seen bare: right index finger and left ring finger.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: signed-out, case 1, person SURG-3
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, GREEN-M:501 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: item-used, case 1, item 2, GREEN-M:502 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 2, "en"
prints: reconciliation slip 2
  event: slip-state, case 1, written, copy 1, n 2
