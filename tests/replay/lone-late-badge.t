# One operator whose badge comes last: the count that was made is stated with it.
room 3
> card NEW CASE
accepted: Case 1 opened in Minor injuries.
next: Who works alone: scan the operator's badge; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 1, n 1
> pack GREEN-M 220 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Who works alone: scan the operator's badge; VISITOR 1 for a visitor without a badge.
  event: item-in, case 1, item 1, GREEN-M:220 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> digit left thumb
accepted: Tourniquet on, left thumb, from 10:00; no forceps on it. The clock runs.
next: A tourniquet is on the left thumb. Who counts: scan the operator's badge; VISITOR 1 for a visitor without a badge.
  event: digit-on, case 1, digit left thumb, first
  event: item-on, case 1, item 1, digit left thumb
  event: owed, case 1, team
  event: owed, case 1, count
> digit left thumb
question: Tourniquet on the left thumb for 0 min.
next: Left thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit left thumb, first
> card OFF
accepted: Off, left thumb, at 10:00, after 0 min. Off is not yet accounted for.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: item-off, case 1, item 1, digit left thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit left thumb
  event: count-started, case 1, final
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Who works alone: scan the operator's badge; VISITOR 1 for a visitor without a badge.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> badge SURG-3
accepted: SURG-3: at the field.
next: Look at the bare left thumb before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: joined, case 1, field, person SURG-3, "SURG-3", first
  event: paid, case 1, team, person SURG-3, badged-in
  event: count-agreed, case 1, final, person SURG-3, n SURG-3
> digit left thumb
question: Left thumb seen bare at 10:00.
next: Who else looked at the bare digit? Scan PATIENT, CARER, COLLEAGUE or NOBODY.
  event: digit-seen-bare, case 1, digit left thumb, person SURG-3, first
  event: asked, case 1, who-looked
> card WHO LOOKED: COLLEAGUE
accepted: Looked at the bare digit as well: a colleague.
next: Still to do: the initial count, not agreed before the tourniquet went on: scan the operator's badge when it was counted aloud.
  event: who-looked, case 1, colleague, first
  event: asked, case 1, nothing more
> badge SURG-3
accepted: SURG-3 counted: the initial count, single-person count.
next: Read the sign-out points aloud: scan NEXT, then the operator's badge if all are true; NO if one is not.
  event: count-agreed, case 1, initial, person SURG-3, n SURG-3, first
  event: paid, case 1, count, person SURG-3, by-operator-late
> card NEXT
accepted: Next.
next: Read the sign-out points aloud: scan the operator's badge if all are true; NO if one is not.
  event: next, case 1
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact. Seen bare: left thumb.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: signed-out, case 1, person SURG-3, first
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, GREEN-M:220 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1, "en"
prints: reconciliation slip 1
  event: slip-state, case 1, written, copy 1, n 1
