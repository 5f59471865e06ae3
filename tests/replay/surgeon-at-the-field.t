# A surgeon and one nurse, and nobody scrubs: the operator is the one at the field of the two who count.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 1
> badge SURG-3
accepted: SURG-3: operating surgeon.
next: Before scrubbing: scan the badge of the one at the field; NEXT, then the surgeon's badge if nobody scrubs; VISITOR 1 for a visitor without a badge.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
> badge CIRC-2
accepted: CIRC-2: at the field.
next: Who circulates: scan the circulating badge; the surgeon's badge if nobody scrubs.
  event: joined, case 1, field, person CIRC-2, "CIRC-2", first
> card NEXT
accepted: Next.
next: Who circulates: scan the circulating badge; the surgeon's badge if nobody scrubs.
  event: next, case 1
> badge SURG-3
accepted: SURG-3: at the field. CIRC-2: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: left, case 1, field, person CIRC-2, first
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2"
  event: joined, case 1, field, person SURG-3, "SURG-3"
> pack GREEN-M 101 lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:101 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SURG-3 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SURG-3, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
+ 12 min
  event: alive, 12 times
> digit right index finger
question: Tourniquet on the right index finger for 12 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:12, after 12 min. Off is not yet accounted for.
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
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> badge CIRC-2
accepted: Final count agreed aloud by SURG-3 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right index finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person SURG-3, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Right index finger seen bare at 10:12.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not.
  event: digit-seen-bare, case 1, digit right index finger, person CIRC-2, first
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact. Seen bare: right index finger.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: signed-out, case 1, person SURG-3, first
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, GREEN-M:101 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1, "en"
prints: reconciliation slip 1
  event: slip-state, case 1, written, copy 1, n 1
> slip 1
accepted: Slip 0000001 of case 1, copy 1, seen: this paper came out.
next: Next patient: scan NEW CASE.
  event: slip-state, case 1, seen, copy 1, n 1

# the surgeon is asked for first, and the nurse comes after
> card NEW CASE
accepted: Case 2 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 2
> badge SURG-3
accepted: SURG-3: operating surgeon.
next: Before scrubbing: scan the badge of the one at the field; NEXT, then the surgeon's badge if nobody scrubs; VISITOR 1 for a visitor without a badge.
  event: joined, case 2, surgeon, person SURG-3, "SURG-3", first
> card NEXT
accepted: Next.
next: Before scrubbing: scan the badge of the one at the field; the surgeon's badge if nobody scrubs; VISITOR 1 for a visitor without a badge.
  event: next, case 2
> badge SURG-3
accepted: SURG-3: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 2, field, person SURG-3, "SURG-3", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 2, circulating, person CIRC-2, "CIRC-2", first
> card HANDOVER
question: Handover.
next: Who hands over? Scan a badge; NO to leave it as it is.
  event: asked, case 2, handover-out, first
> badge SURG-3
question: SURG-3 hands over (at the field).
next: Who takes over? Scan a badge; NO to leave it as it is.
  event: asked, case 2, handover-in, person SURG-3, first
> badge SCRUB-1
question: SCRUB-1 takes over from SURG-3, at the field.
next: Count aloud together what is on the sheet: scan the circulating badge.
  event: left, case 2, field, person SURG-3, first
  event: joined, case 2, field, person SCRUB-1, "SCRUB-1"
  event: count-started, case 2, handover
  event: owed, case 2, handover
  event: asked, case 2, handover-agree, person SURG-3, n 1
> badge CIRC-2
accepted: Handover count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: count-agreed, case 2, handover, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: paid, case 2, handover, person CIRC-2, agreed-aloud
  event: asked, case 2, nothing more
> show
> card VISITOR 1
question: Visitor 1.
next: Is the visitor the operating surgeon? Scan YES; NO if not.
  event: asked, case 2, visitor-is-surgeon, person visitor 1, first
> card YES
refused: SURG-3 is the operating surgeon here: scan HANDOVER to change over, or NO.
next: Is the visitor the operating surgeon? Scan YES; NO if not.
  event: refused, case 2, "SURG-3 is the operating surgeon here: scan HANDOVER to change over, or NO."
