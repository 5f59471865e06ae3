# A handover count that was begun is owed, whatever else is scanned before it is agreed.
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
> pack GREEN-M 518 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:518 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 1, digit right thumb
> card HANDOVER
question: Handover.
next: Who hands over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-out, first
> badge SCRUB-1
question: SCRUB-1 hands over (at the field).
next: Who takes over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-in, person SCRUB-1, first
> badge SCRUB-5
question: SCRUB-5 takes over from SCRUB-1, at the field.
next: Right thumb: See the tourniquet on it: scan its digit card; WITHOUT FULL SIGHT if it cannot be seen.
  event: left, case 1, field, person SCRUB-1, first
  event: joined, case 1, field, person SCRUB-5, "SCRUB-5"
  event: count-started, case 1, handover
  event: owed, case 1, handover
  event: asked, case 1, handover-seen, digit right thumb, person SCRUB-1, n 5
> digit right thumb
accepted: Tourniquet seen on the right thumb.
next: Count aloud together what is on the sheet: scan the circulating badge.
  event: digit-seen-on, case 1, digit right thumb, n 1, first
  event: asked, case 1, handover-agree, person SCRUB-1, n 5
> badge CIRC-2
accepted: Handover count agreed aloud by SCRUB-5 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: count-agreed, case 1, handover, person SCRUB-5, other CIRC-2, n CIRC-2, first
  event: paid, case 1, handover, person CIRC-2, agreed-aloud
  event: asked, case 1, nothing more
> card HANDOVER
question: Handover.
next: Who hands over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-out, first
> badge SCRUB-5
question: SCRUB-5 hands over (at the field).
next: Who takes over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-in, person SCRUB-5, first
> badge SCRUB-1
question: SCRUB-1 takes over from SCRUB-5, at the field.
next: Right thumb: See the tourniquet on it: scan its digit card; WITHOUT FULL SIGHT if it cannot be seen.
  event: left, case 1, field, person SCRUB-5, first
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1"
  event: count-started, case 1, handover
  event: owed, case 1, handover
  event: asked, case 1, handover-seen, digit right thumb, person SCRUB-5, n 1
> card NO
refused: NO does not answer what is asked: See the tourniquet on it.
next: Right thumb: See the tourniquet on it: scan its digit card; WITHOUT FULL SIGHT if it cannot be seen.
  event: refused, case 1, "NO does not answer what is asked: See the tourniquet on it."
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right thumb: on, now 0 min, total 0 min, longest 0 min
owed: handover
> digit right thumb
accepted: Tourniquet seen on the right thumb.
next: Count aloud together what is on the sheet: scan the circulating badge.
  event: digit-seen-on, case 1, digit right thumb, n 1, first
  event: asked, case 1, handover-agree, person SCRUB-5, n 1
> card OFF
accepted: Off, right thumb, at 10:00, after 0 min. Off is not yet accounted for.
next: Still to do: the handover count: scan the circulating badge when it was counted aloud.
  event: item-off, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right thumb
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right thumb: off, now 0 min, total 0 min, longest 0 min
owed: handover
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right thumb before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Right thumb seen bare at 10:01.
next: Still to do: the handover count: scan the circulating badge when it was counted aloud.
  event: digit-seen-bare, case 1, digit right thumb, person CIRC-2, first
> badge SURG-3
accepted: SURG-3: operating surgeon.
next: Still to do: the handover count: scan the circulating badge when it was counted aloud.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
> badge CIRC-2
accepted: Handover count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not.
  event: count-agreed, case 1, handover, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: paid, case 1, handover, person CIRC-2, agreed-aloud
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact. Seen bare: right thumb.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: signed-out, case 1, person SURG-3, first
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, GREEN-M:518 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1, "en"
prints: reconciliation slip 1
  event: slip-state, case 1, written, copy 1, n 1
