# Scans that a scanner had stored come at once after a silence. They are held, their digit's clock starts at once as
# 'on?', and they are asked about by name as one question among the others (rules 3, 17 and 19).

# 1. A whole beginning came late: YES enters each at its own time.
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
> stored 840 s: pack GREEN-M 101; badge CIRC-2; 640 s digit left thumb; 40 s card OFF
question: 4 stored scans came. Left thumb: the clock runs as 'on?' from 09:49.
next: 4 scans were stored: pack finger tourniquet, green, M; CIRC-2; left thumb; OFF (oldest 09:46). Made in this room, for this case? Scan YES to enter as late; NO to throw away.
  event: scan-held, thing, item 1, other 1, GREEN-M:101 "finger tourniquet, green, M" tourniquet known by its pack single-use, "hand-1", 840 s before, by wall clock 840 s before
  event: scan-held, badge, item 2, other 1, no line, n 2, "hand-1", 839 s before, by wall clock 839 s before
  event: scan-held, digit, item 3, digit left thumb, other 1, no line, "hand-1", 640 s before, by wall clock 640 s before
  event: scan-held, card, item 4, other 1, no line, n 40, "hand-1", 40 s before, by wall clock 40 s before
  event: digit-maybe-on, case 1, digit left thumb, first, late, 640 s before, by wall clock 640 s before
  event: owed, case 1, maybe-on, digit left thumb, 640 s before, by wall clock 640 s before
  event: asked, case 1, stored
> show
left thumb: maybe on, now 10 min, total 10 min, longest 10 min
owed: maybe-on
> card YES
accepted: 4 stored scans are entered as late.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: asked, case 1, nothing more, first
accepted: Counted in: 1 finger tourniquet, green, M.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:101 "finger tourniquet, green, M" tourniquet known by its pack single-use, n 1, first, late, 846 s before, by wall clock 846 s before
  event: held-scan-answered, entered, ref scan-held 9 before, 846 s before, by wall clock 846 s before
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Still to do, left thumb: whether a tourniquet is on: scan NEXT, then YES; NO if not.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first, late, 845 s before, by wall clock 845 s before
  event: held-scan-answered, entered, ref scan-held 10 before, 845 s before, by wall clock 845 s before
accepted: Tourniquet on, left thumb, from 09:49; no forceps on it. The clock runs.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: paid, case 1, maybe-on, digit left thumb, was-on, first, late, 646 s before, by wall clock 646 s before
  event: digit-on, case 1, digit left thumb, late, 646 s before, by wall clock 646 s before
  event: item-on, case 1, item 1, digit left thumb, late, 646 s before, by wall clock 646 s before
  event: held-scan-answered, entered, ref scan-held 13 before, 646 s before, by wall clock 646 s before
accepted: Off, left thumb, at 09:59, after 10 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit left thumb, first, late, 46 s before, by wall clock 46 s before
  event: digit-off, case 1, digit left thumb, late, 46 s before, by wall clock 46 s before
  event: held-scan-answered, entered, ref scan-held 15 before, 46 s before, by wall clock 46 s before
> show
item 1: finger tourniquet, green, M, off, 0 of 1
left thumb: off, now 10 min, total 10 min, longest 10 min
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
next: Look at the bare left thumb before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> stored 30 s: digit left thumb
question: 1 stored scan came. Left thumb: the clock runs as 'on?' from 09:59.
next: A scan was stored: left thumb (made 09:59). Made in this room, for this case? Scan YES to enter as late; NO to throw away.
  event: scan-held, digit, item 1, digit left thumb, other 1, no line, "hand-1", 30 s before, by wall clock 30 s before
  event: digit-doubted, case 1, digit left thumb, first, late, 30 s before, by wall clock 30 s before
  event: owed, case 1, maybe-on, digit left thumb, 30 s before, by wall clock 30 s before
  event: asked, case 1, stored
> card YES
accepted: 1 stored scan is entered as late.
next: Look at the bare left thumb before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: asked, case 1, nothing more, first
question: Left thumb: scanned at 09:59, before what was entered since.
next: Left thumb: Is a tourniquet on it now? Scan NEXT, then YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: asked, case 1, is-on, digit left thumb, n 1, first, late, 33 s before, by wall clock 33 s before
  event: held-scan-answered, entered, ref scan-held 6 before, 33 s before, by wall clock 33 s before
> card NO
accepted: Not on: left thumb.
next: Look at the bare left thumb before the dressing: scan its digit card; NEXT, then NO if a tourniquet is on it.
  event: digit-not-on, case 1, digit left thumb, first
  event: paid, case 1, maybe-on, digit left thumb, not-on
  event: asked, case 1, nothing more
> digit left thumb
accepted: Left thumb seen bare at 10:00.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not; VISITOR 1 for a visitor without a badge.
  event: digit-seen-bare, case 1, digit left thumb, person CIRC-2, first
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact. Seen bare: left thumb.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: signed-out, case 1, person SURG-3
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, GREEN-M:101 "finger tourniquet, green, M" tourniquet known by its pack single-use, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1, "en"
prints: reconciliation slip 1
  event: slip-state, case 1, written, copy 1, n 1
