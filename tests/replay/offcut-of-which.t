# An offcut is counted while two tourniquets are on, and the one that it was put to is whole: it is asked for with the other one,
# whichever of both is shown first.
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
> pack GREEN-M 331 lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:331 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1, first
> pack GREEN-M 332 lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, GREEN-M:332 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
+ 1 min
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:01; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 2, digit right index finger
> pack GREEN-M 331 lot T26 expiry 20310331
refused: Finger tourniquet, green, M: on the sheet already, not counted twice.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: refused, case 1, "Finger tourniquet, green, M: on the sheet already, not counted twice."
> digit right middle finger
accepted: Tourniquet on, right middle finger, from 10:01; no forceps on it. The clock runs.
next: On: right index finger and right middle finger. When one is off: scan its digit card, then OFF.
  event: digit-on, case 1, digit right middle finger, first
  event: item-on, case 1, item 1, digit right middle finger
> pack GREEN-M 332 lot T26 expiry 20310331
refused: Finger tourniquet, green, M: on the right index finger; its wrapper proves nothing more.
next: On: right index finger and right middle finger. When one is off: scan its digit card, then OFF.
  event: refused, case 1, "Finger tourniquet, green, M: on the right index finger; its wrapper proves nothing more."
+ 1 min
  event: alive
> card OFFCUT
accepted: Offcut counted: finger tourniquet, green, M, now 2 pieces.
next: On: right index finger and right middle finger. When one is off: scan its digit card, then OFF.
  event: item-more, case 1, item 2, n 1, first
> digit right index finger
question: Tourniquet on the right index finger for 1 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:02, after 1 min. Off is not yet accounted for.
next: When the tourniquet is off the right middle finger: scan its digit card, then OFF.
  event: item-off, case 1, item 2, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
> digit right middle finger
question: Tourniquet on the right middle finger for 1 min.
next: Right middle finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right middle finger, first
> card OFF
accepted: Off, right middle finger, at 10:02, after 1 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right middle finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right middle finger
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: finger tourniquet, green, M, off, 0 of 2
right index finger: off, now 1 min, total 1 min, longest 1 min
right middle finger: off, now 1 min, total 1 min, longest 1 min
> card CUT AND COMPLETE
accepted: Accounted for: finger tourniquet, green, M: shown cut and complete, 1 of 1.
next: Show all 2 pieces of the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE (NEXT first) or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: item-shown, case 1, shown, item 1, cut and complete, n 1, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1. Nothing was cut from this one: the offcut is asked for with the other tourniquet.
next: Show all 2 pieces of the finger tourniquet, green, M: scan INTACT (NEXT first), CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: item-more, case 1, item 2, n -1, first
  event: count-again, case 1, item 1
  event: item-more, case 1, item 1, n 1
  event: item-shown, case 1, shown, item 2, intact, n 1
> show
item 1: finger tourniquet, green, M, off, 0 of 2
item 2: finger tourniquet, green, M, accounted, 1 of 1
right index finger: off, now 1 min, total 1 min, longest 1 min
right middle finger: off, now 1 min, total 1 min, longest 1 min
> card CUT AND COMPLETE
accepted: Accounted for: finger tourniquet, green, M: shown cut and complete, 2 of 2.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, shown, item 1, cut and complete, n 2, first
> show
item 1: finger tourniquet, green, M, accounted, 2 of 2
item 2: finger tourniquet, green, M, accounted, 1 of 1
right index finger: off, now 1 min, total 1 min, longest 1 min
right middle finger: off, now 1 min, total 1 min, longest 1 min
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right index finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Right index finger seen bare at 10:03.
next: Look at the bare right middle finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: digit-seen-bare, case 1, digit right index finger, person CIRC-2, first
> digit right middle finger
accepted: Right middle finger seen bare at 10:03.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not; VISITOR 1 for a visitor without a badge.
  event: digit-seen-bare, case 1, digit right middle finger, person CIRC-2, first
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 2 of 2 shown cut and complete. Finger tourniquet, green, M: 1 of 1 shown intact. Seen bare: right index finger and right middle finger.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: signed-out, case 1, person SURG-3
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, GREEN-M:331 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1
  event: item-used, case 1, item 2, GREEN-M:332 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1, "en"
prints: reconciliation slip 1
  event: slip-state, case 1, written, copy 1, n 1
> slip 1
accepted: Slip 0000001 of case 1, copy 1, seen: this paper came out.
next: Next patient: scan NEW CASE.
  event: slip-state, case 1, seen, copy 1, n 1
> card NEW CASE
accepted: Case 2 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 2
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 2, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 2, circulating, person CIRC-2, "CIRC-2", first
> pack GREEN-M 333 lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 2, item 1, GREEN-M:333 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1, first
> pack PLAIN-M
accepted: Counted in: 1 finger tourniquet, orange, M. It bears no number of its own: the station cannot tell it from another.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 2, item 2, PLAIN-M "finger tourniquet, orange, M" tourniquet single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 2, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
+ 1 min
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:04; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 2, digit right index finger, first
  event: item-on, case 2, item 2, digit right index finger
> digit right middle finger
accepted: Tourniquet on, right middle finger, from 10:04; no forceps on it. The clock runs.
next: On: right index finger and right middle finger. When one is off: scan its digit card, then OFF.
  event: digit-on, case 2, digit right middle finger, first
  event: item-on, case 2, item 1, digit right middle finger
+ 1 min
  event: alive
> card OFFCUT
accepted: Offcut counted: finger tourniquet, orange, M, now 2 pieces.
next: On: right index finger and right middle finger. When one is off: scan its digit card, then OFF.
  event: item-more, case 2, item 2, n 1, first
> digit right index finger
question: Tourniquet on the right index finger for 1 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 2, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:05, after 1 min. Off is not yet accounted for.
next: When the tourniquet is off the right middle finger: scan its digit card, then OFF.
  event: item-off, case 2, item 2, digit right index finger, first
  event: asked, case 2, nothing more
  event: digit-off, case 2, digit right index finger
> digit right middle finger
question: Tourniquet on the right middle finger for 1 min.
next: Right middle finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 2, off, digit right middle finger, first
> card OFF
accepted: Off, right middle finger, at 10:06, after 1 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 2, item 1, digit right middle finger, first
  event: asked, case 2, nothing more
  event: digit-off, case 2, digit right middle finger
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 2, final, first
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: finger tourniquet, orange, M, off, 0 of 2
right index finger: off, now 1 min, total 1 min, longest 1 min
right middle finger: off, now 1 min, total 1 min, longest 1 min
> card NO
accepted: NOT THERE: finger tourniquet, green, M, 0 of 1.
next: Show all 2 pieces of the finger tourniquet, orange, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NEXT, then NO if it is not there; the digit card if it is on a digit.
  event: item-not-shown, case 2, item 1, n 1, first
> card INTACT
accepted: Accounted for: finger tourniquet, orange, M: shown intact, 1 of 1. DISCREPANCY: say it aloud. The discrepancy slip prints now. Nothing was cut from this one: the offcut is asked for with the other tourniquet.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: item-more, case 2, item 2, n -1, first
  event: item-more, case 2, item 1, n 1
  event: item-not-shown, case 2, item 1, n 2
  event: item-shown, case 2, shown, item 2, intact, n 1
  event: discrepancy, case 2, n 1
  event: slip-queued, case 2, discrepancy, copy 1, n 2, "en"
prints: discrepancy slip 2
  event: slip-state, case 2, written, copy 1, n 2
> show
item 1: finger tourniquet, green, M, off, 0 of 2
item 2: finger tourniquet, orange, M, accounted, 1 of 1
right index finger: off, now 1 min, total 1 min, longest 1 min
right middle finger: off, now 1 min, total 1 min, longest 1 min
> card FOUND
question: Found.
next: Found: is it the finger tourniquet, green, M? Scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is something else.
  event: asked, case 2, found, item 1, first
> card CUT AND COMPLETE
accepted: Found, finger tourniquet, green, M: shown cut and complete, 2 of 2.
next: Agree the final count aloud: scan the circulating badge.
  event: asked, case 2, nothing more, first
  event: item-shown, case 2, shown, item 1, cut and complete, n 2, "say it aloud and stop closing"
  event: discrepancy, case 2
> show
item 1: finger tourniquet, green, M, accounted, 2 of 2
item 2: finger tourniquet, orange, M, accounted, 1 of 1
right index finger: off, now 1 min, total 1 min, longest 1 min
right middle finger: off, now 1 min, total 1 min, longest 1 min
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right index finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 2, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Right index finger seen bare at 10:06.
next: Look at the bare right middle finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: digit-seen-bare, case 2, digit right index finger, person CIRC-2, first
> digit right middle finger
accepted: Right middle finger seen bare at 10:06.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not; VISITOR 1 for a visitor without a badge.
  event: digit-seen-bare, case 2, digit right middle finger, person CIRC-2, first
> badge SURG-3
accepted: Case 2 ended reconciled. Finger tourniquet, green, M: 2 of 2 shown cut and complete. Finger tourniquet, orange, M: 1 of 1 shown intact. Seen bare: right index finger and right middle finger.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: joined, case 2, surgeon, person SURG-3, "SURG-3", first
  event: signed-out, case 2, person SURG-3
  event: sign-out-point, case 2, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 2, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 2, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 2, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 2, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 2, item 1, GREEN-M:333 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1
  event: case-ended, case 2, reconciled
  event: slip-queued, case 2, reconciliation, copy 1, n 3, "en"
prints: reconciliation slip 3
  event: slip-state, case 2, written, copy 1, n 3
> slip 2
accepted: Slip 0000002 of case 2, copy 1, seen: this paper came out.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: slip-state, case 2, seen, copy 1, n 2
> card NEW CASE
accepted: Case 3 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 3
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 3, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 3, circulating, person CIRC-2, "CIRC-2", first
> pack GREEN-M 334 lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 3, item 1, GREEN-M:334 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1, first
> pack PLAIN-M
accepted: Counted in: 1 finger tourniquet, orange, M. It bears no number of its own: the station cannot tell it from another.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 3, item 2, PLAIN-M "finger tourniquet, orange, M" tourniquet single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 3, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card OFFCUT
accepted: Offcut counted: finger tourniquet, orange, M, now 2 pieces.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: item-more, case 3, item 2, n 1, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:07; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 3, digit right index finger, first
  event: item-on, case 3, item 2, digit right index finger
> digit right middle finger
accepted: Tourniquet on, right middle finger, from 10:07; no forceps on it. The clock runs.
next: On: right index finger and right middle finger. When one is off: scan its digit card, then OFF.
  event: digit-on, case 3, digit right middle finger, first
  event: item-on, case 3, item 1, digit right middle finger
> digit right index finger
question: Tourniquet on the right index finger for 0 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 3, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:07, after 0 min. Off is not yet accounted for.
next: When the tourniquet is off the right middle finger: scan its digit card, then OFF.
  event: item-off, case 3, item 2, digit right index finger, first
  event: asked, case 3, nothing more
  event: digit-off, case 3, digit right index finger
> digit right middle finger
question: Tourniquet on the right middle finger for 0 min.
next: Right middle finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 3, off, digit right middle finger, first
> card OFF
accepted: Off, right middle finger, at 10:07, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 3, item 1, digit right middle finger, first
  event: asked, case 3, nothing more
  event: digit-off, case 3, digit right middle finger
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 3, final, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Show all 2 pieces of the finger tourniquet, orange, M: scan INTACT (NEXT first), CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: item-shown, case 3, shown, item 1, intact, n 1, first
> card NEXT
accepted: Next.
next: Show all 2 pieces of the finger tourniquet, orange, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: next, case 3
> card INTACT
accepted: Accounted for: finger tourniquet, orange, M: shown intact, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-more, case 3, item 2, n -1, first
  event: item-shown, case 3, shown, item 2, intact, n 1
> show
item 1: finger tourniquet, green, M, accounted, 1 of 1
item 2: finger tourniquet, orange, M, accounted, 1 of 1
right index finger: off, now 0 min, total 0 min, longest 0 min
right middle finger: off, now 0 min, total 0 min, longest 0 min
