# Forceps missing in one case turn up in the final count of the next: no extra item of that one, no slip for the wrong patient
# (rules 21 and 24).
begins from next-without-forceps
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 2, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit left thumb
accepted: Tourniquet on, left thumb, from 10:02; no forceps on it. The clock runs.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: digit-on, case 2, digit left thumb, first
  event: item-on, case 2, item 1, digit left thumb
> digit left thumb
question: Tourniquet on the left thumb for 0 min.
next: Left thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 2, off, digit left thumb, first
> card OFF
accepted: Off, left thumb, at 10:02, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 2, item 1, digit left thumb, first
  event: asked, case 2, nothing more
  event: digit-off, case 2, digit left thumb
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 2, final, first
> pack FORCEPS 53
accepted: FOUND: artery forceps, curved comes from case 1, where it was missing. Look at that patient's digit now and tell the surgeon. Keep it out of this field.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: found-after, case 1, FORCEPS:53 "artery forceps, curved" forceps known by its mark
addendum: case 1
  event: slip-queued, case 1, addendum, copy 1, n 3, "en"
prints: addendum slip 3
  event: owed, case 1, patient-called-back
  event: owed, case 1, ward-told
  event: item-used, case 1, FORCEPS:53 "artery forceps, curved" forceps known by its mark, n 1
  event: slip-state, case 1, written, copy 1, n 3
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 2, shown, item 1, intact, n 1, first
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare left thumb before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 2, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit left thumb
accepted: Left thumb seen bare at 10:02.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not; VISITOR 1 for a visitor without a badge.
  event: digit-seen-bare, case 2, digit left thumb, person CIRC-2, first
> badge SURG-3
accepted: Case 2 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact. Seen bare: left thumb.
next: Case 1: call that patient back now, if not here any more: scan STEP DONE when it was done; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: joined, case 2, surgeon, person SURG-3, "SURG-3", first
  event: signed-out, case 2, person SURG-3
  event: sign-out-point, case 2, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 2, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 2, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 2, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 2, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 2, item 1, GREEN-M:509 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: case-ended, case 2, reconciled
  event: slip-queued, case 2, reconciliation, copy 1, n 4, "en"
prints: reconciliation slip 4
  event: slip-state, case 2, written, copy 1, n 4
> slip 3
accepted: Slip 0000003 of case 1, copy 1, seen: this paper came out.
next: Case 1: call that patient back now, if not here any more: scan STEP DONE when it was done; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: slip-state, case 1, seen, copy 1, n 3
> slip 4
accepted: Slip 0000004 of case 2, copy 1, seen: this paper came out.
next: Case 1: call that patient back now, if not here any more: scan STEP DONE when it was done; NEW CASE for the next patient.
  event: slip-state, case 2, seen, copy 1, n 4
