# A stored OFF does not say which of two digits it is of. The digit's card answers, and OFF keeps the time when it was scanned.
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
> pack GREEN-M 101 lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:101 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1, first
> pack GREEN-M 102 lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, GREEN-M:102 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 2, digit right thumb
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: On: right thumb and right index finger. When one is off: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
+ 10 min
  event: alive, 10 times
> stored 300 s: card OFF
question: 1 stored scan came.
next: A scan was stored: OFF (made 10:05). Made in this room, for this case? Scan YES to enter as late; NO to throw away.
  event: scan-held, card, item 1, other 1, no line, n 40, "hand-1", 300 s before, by wall clock 300 s before
  event: asked, case 1, stored, first
> card YES
accepted: 1 stored scan is entered as late.
next: On: right thumb and right index finger. When one is off: scan its digit card, then OFF.
  event: asked, case 1, nothing more, first
question: More than one digit had a tourniquet in this case.
next: Which digit is it off? Scan its digit card; NO to leave it as it is.
  event: asked, case 1, which-off, n 1, first, late, 303 s before, by wall clock 303 s before
  event: held-scan-answered, entered, ref scan-held 4 before, 303 s before, by wall clock 303 s before
> digit right index finger
accepted: Off, right index finger, at 10:05, after 5 min. Off is not yet accounted for.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: item-off, case 1, item 1, digit right index finger, first, late, 306 s before, by wall clock 306 s before
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger, late, 306 s before, by wall clock 306 s before
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: finger tourniquet, green, M, on, 0 of 1
right thumb: on, now 10 min, total 10 min, longest 10 min
right index finger: off, now 5 min, total 5 min, longest 5 min
> card OFF
question: More than one digit had a tourniquet in this case.
next: Which digit is it off? Scan its digit card; NO to leave it as it is.
  event: asked, case 1, which-off, first
+ 3 min
  event: alive, 3 times
> digit right thumb
accepted: Off, right thumb, at 10:13, after 13 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 2, digit right thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right thumb
> card FINAL COUNT
accepted: Final count, line by line.
next: Lay 2 × finger tourniquet, green, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: count-started, case 1, final, first
> card SHOWN 2
accepted: Accounted for: finger tourniquet, green, M: shown intact, 2 of 2.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
  event: item-shown, case 1, shown, item 2, intact, n 1
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right thumb before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Right thumb seen bare at 10:13.
next: Look at the bare right index finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: digit-seen-bare, case 1, digit right thumb, person CIRC-2, first
> digit right index finger
accepted: Right index finger seen bare at 10:13.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not; VISITOR 1 for a visitor without a badge.
  event: digit-seen-bare, case 1, digit right index finger, person CIRC-2, first
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 2 of 2 shown intact. Seen bare: right thumb and right index finger.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: signed-out, case 1, person SURG-3
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, GREEN-M:101 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1
  event: item-used, case 1, item 2, GREEN-M:102 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1, "en"
prints: reconciliation slip 1
  event: slip-state, case 1, written, copy 1, n 1
