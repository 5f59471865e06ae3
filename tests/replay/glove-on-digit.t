# A glove finger is on the digit before any case is open: its clock runs, its code lists it late as what it is, and the surgeon
# answers for it (rules 3 and 5). No second tourniquet is made of it.
> digit right ring finger
question: Right ring finger: the clock runs as 'on?'. Case 1 is opened.
next: Right ring finger: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: case-opened, case 1
  event: owed, case 1, team
  event: digit-maybe-on, case 1, digit right ring finger
  event: owed, case 1, maybe-on, digit right ring finger
  event: asked, case 1, is-on, digit right ring finger, n 1
> card YES
accepted: Tourniquet on, right ring finger, from 10:00; no forceps on it. The clock runs.
next: A tourniquet is on the right ring finger. Who counts: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: paid, case 1, maybe-on, digit right ring finger, is-on, first
  event: digit-on, case 1, digit right ring finger
  event: item-in, case 1, item 1, no line "tourniquet, not listed yet" tourniquet unlisted, n 1
  event: owed, case 1, listing, item 1
  event: item-on, case 1, item 1, digit right ring finger
  event: owed, case 1, team
  event: owed, case 1, count
  event: asked, case 1, nothing more
> card UNLISTED TOURNIQUET
refused: Entered already: the tourniquet on the right ring finger is not listed. Say aloud what it is.
next: A tourniquet is on the right ring finger. Who counts: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: refused, case 1, "Entered already: the tourniquet on the right ring finger is not listed. Say aloud what it is."
> pack GLOVE
accepted: Listed as what it is, because it is already on: IMPROVISED, glove finger. But glove finger may not be used as a tourniquet; use a listed finger tourniquet: the surgeon answers for it.
next: A tourniquet is on the right ring finger. Who counts: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: item-listed, case 1, item 1, GLOVE "glove finger" tourniquet single-use unlisted, first
  event: paid, case 1, listing, item 1, improvised
  event: owed, case 1, reason, item 1, "glove finger may not be used as a tourniquet; use a listed finger tourniquet"
> show
item 1: glove finger, on, 0 of 1
right ring finger: on, now 0 min, total 0 min, longest 0 min
owed: team
owed: count
owed: reason
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: A tourniquet is on the right ring finger. Who counts: scan the circulating badge.
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Still to do: the initial count, not agreed before the tourniquet went on: scan NEXT, then the circulating badge when it was counted aloud.
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2", first
  event: paid, case 1, team, person CIRC-2, badged-in
> card NEXT
accepted: Next.
next: Still to do: the initial count, not agreed before the tourniquet went on: scan the circulating badge when it was counted aloud.
  event: next, case 1
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Still to do: the surgeon's answer for an item that the station refused: glove finger: scan the surgeon's badge; VISITOR 1 for a visitor without a badge.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: paid, case 1, count, person CIRC-2, agreed-aloud-late
> badge SURG-3
accepted: SURG-3 answers for the item that the station refused. The slip says so.
next: When the tourniquet is off the right ring finger: scan its digit card, then OFF.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: paid, case 1, reason, item 1, person SURG-3, surgeon-answers
> show
item 1: glove finger, on, 0 of 1
right ring finger: on, now 0 min, total 0 min, longest 0 min
> digit right ring finger
question: Tourniquet on the right ring finger for 0 min.
next: Right ring finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right ring finger, first
> card OFF
accepted: Off, right ring finger, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right ring finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right ring finger
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the glove finger: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card INTACT
accepted: Accounted for: glove finger: shown intact, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right ring finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right ring finger
accepted: Right ring finger seen bare at 10:00.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not.
  event: digit-seen-bare, case 1, digit right ring finger, person CIRC-2, first
> badge SURG-3
accepted: Case 1 ended reconciled. Glove finger: 1 of 1 shown intact. Seen bare: right ring finger.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: signed-out, case 1, person SURG-3, first
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1, "en"
prints: reconciliation slip 1
  event: slip-state, case 1, written, copy 1, n 1
