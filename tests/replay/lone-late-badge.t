# One operator whose badge comes last: the count that was made is stated with it.
room 3
> card NEW CASE
accepted: Case 1 opened in Minor injuries.
next: Scan the operator's badge.
  event: case-opened, case 1, n 1
> pack GREEN-M 220 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan the operator's badge.
  event: item-in, case 1, item 1, GREEN-M:220 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> digit left thumb
accepted: Tourniquet on, left thumb, from 10:00; no forceps on it. The clock runs.
next: Scan the operator's badge.
  event: digit-on, case 1, digit left thumb, first
  event: item-on, case 1, item 1, digit left thumb
  event: owed, case 1, team
  event: owed, case 1, count
> digit left thumb
question: Tourniquet on the left thumb for 0 min.
next: Left thumb: Is it off? If it is, scan OFF; NO if it is still on.
  event: asked, case 1, off, digit left thumb, first
> card OFF
accepted: Off, left thumb, at 10:00, after 0 min. Off is not yet accounted for.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there.
  event: item-off, case 1, item 1, digit left thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit left thumb
  event: count-started, case 1, final
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there.
  event: count-started, case 1, final, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Scan the operator's badge.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> badge SURG-3
accepted: SURG-3: at the field.
next: Look at the bare left thumb before the dressing, then scan its digit card.
  event: joined, case 1, field, person SURG-3, "SURG-3", first
  event: paid, case 1, team, person SURG-3, "both have badged in"
  event: count-agreed, case 1, initial, person SURG-3, n SURG-3
  event: paid, case 1, count, person SURG-3, "stated by the operator after the tourniquet went on"
  event: count-agreed, case 1, final, person SURG-3, n SURG-3
> digit left thumb
question: Left thumb seen bare at 10:00.
next: Who else looked at the bare digit? Scan PATIENT, CARER, COLLEAGUE or NOBODY.
  event: digit-seen-bare, case 1, digit left thumb, person SURG-3, first
  event: asked, case 1, who-looked
> card WHO LOOKED: COLLEAGUE
accepted: Looked at the bare digit as well: a colleague.
next: Read the sign-out points aloud. If all are so, scan the operator's badge; if one is not, NO.
  event: who-looked, case 1, colleague, first
  event: asked, case 1, nothing more
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact; left thumb seen bare.
next: When the paper is in your hand: scan the code on the slip. Next patient: scan NEW CASE.
  event: signed-out, case 1, person SURG-3, first
  event: item-used, case 1, item 1, GREEN-M:220 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1
prints: reconciliation slip 1
