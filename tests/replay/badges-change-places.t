# The badges of the two who count were read in the wrong order: they change places, before the count without another word, after it
# as at a handover.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 1
> badge CIRC-2
accepted: CIRC-2: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 1, field, person CIRC-2, "CIRC-2", first
> badge SCRUB-1
accepted: SCRUB-1: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 1, circulating, person SCRUB-1, "SCRUB-1", first
> pack GREEN-M 101 lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:101 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1, first
> card MISREAD
question: Misread.
next: What was misread? Scan the pack; NO to leave it as it is.
  event: asked, case 1, move-to, first
> badge CIRC-2
question: CIRC-2 hands over (at the field).
next: Who takes over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-in, person CIRC-2, first
> badge SCRUB-1
accepted: SCRUB-1: at the field. CIRC-2: circulating.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: left, case 1, field, person CIRC-2, first
  event: left, case 1, circulating, person SCRUB-1
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1"
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2"
  event: asked, case 1, nothing more
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
> card HANDOVER
question: Handover.
next: Who hands over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-out, first
> badge CIRC-2
question: CIRC-2 hands over (circulating).
next: Who takes over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-in, person CIRC-2, first
> badge SCRUB-1
question: SCRUB-1: circulating. CIRC-2: at the field.
next: Right index finger: See the tourniquet on it: scan its digit card; WITHOUT FULL SIGHT if it cannot be seen.
  event: left, case 1, circulating, person CIRC-2, first
  event: left, case 1, field, person SCRUB-1
  event: joined, case 1, circulating, person SCRUB-1, "SCRUB-1"
  event: joined, case 1, field, person CIRC-2, "CIRC-2"
  event: count-started, case 1, handover
  event: owed, case 1, handover
  event: asked, case 1, handover-seen, digit right index finger, person CIRC-2, n 1
> digit right index finger
accepted: Tourniquet seen on the right index finger.
next: Count aloud together what is on the sheet: scan the circulating badge.
  event: digit-seen-on, case 1, digit right index finger, n 1, first
  event: asked, case 1, handover-agree, person CIRC-2, n 1
> badge SCRUB-1
accepted: Handover count agreed aloud by CIRC-2 and SCRUB-1, recorded by SCRUB-1.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: count-agreed, case 1, handover, person CIRC-2, other SCRUB-1, n SCRUB-1, first
  event: paid, case 1, handover, person SCRUB-1, agreed-aloud
  event: asked, case 1, nothing more
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
> badge SCRUB-1
accepted: Final count agreed aloud by CIRC-2 and SCRUB-1, recorded by SCRUB-1.
next: Look at the bare right index finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person CIRC-2, other SCRUB-1, n SCRUB-1, first
> digit right index finger
accepted: Right index finger seen bare at 10:13.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not; VISITOR 1 for a visitor without a badge.
  event: digit-seen-bare, case 1, digit right index finger, person SCRUB-1, first
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact. Seen bare: right index finger.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: signed-out, case 1, person SURG-3
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
