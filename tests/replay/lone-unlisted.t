# One operator, a tourniquet that is not listed: the count is stated once it has a name.
room 3
> badge SURG-3
accepted: Case 1 opened in Minor injuries. SURG-3 works alone: single-person count.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: case-opened, case 1, n 1
  event: joined, case 1, field, person SURG-3, "SURG-3"
> card UNLISTED TOURNIQUET
accepted: Entered: a tourniquet that is not listed. If it is on a digit, scan that digit card now.
next: Still to do: which tourniquet it is, not listed: scan its pack; the operator's badge when it was said aloud which it is.
  event: item-in, case 1, item 1, no line "tourniquet, not listed" tourniquet unlisted, n 1, first
  event: owed, case 1, listing, item 1
> digit left thumb
accepted: Tourniquet on, left thumb, from 10:00; no forceps on it. The clock runs.
next: Still to do: which tourniquet it is, not listed: scan its pack; the operator's badge when it was said aloud which it is.
  event: digit-on, case 1, digit left thumb, first
  event: item-on, case 1, item 1, digit left thumb
  event: count-agreed, case 1, initial, person SURG-3, n SURG-3
> digit left thumb
question: Tourniquet on the left thumb for 0 min.
next: Left thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit left thumb, first
> card OFF
accepted: Off, left thumb, at 10:00, after 0 min. Off is not yet accounted for.
next: Show the tourniquet, not listed: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: item-off, case 1, item 1, digit left thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit left thumb
  event: count-started, case 1, final
> card INTACT
accepted: Accounted for: tourniquet, not listed: shown intact, 1 of 1.
next: Look at the bare left thumb before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
  event: count-agreed, case 1, final, person SURG-3, n SURG-3
> show
item 1: tourniquet, not listed, accounted, 1 of 1
left thumb: off, now 0 min, total 0 min, longest 0 min
owed: listing
> badge SURG-3
refused: Not yet the sign-out: still to do: which tourniquet it is, not listed.
next: Look at the bare left thumb before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: refused, case 1, "Not yet the sign-out: still to do: which tourniquet it is, not listed."
> digit left thumb
question: Left thumb seen bare at 10:00.
next: Who else looked at the bare digit? Scan PATIENT, CARER, COLLEAGUE or NOBODY.
  event: digit-seen-bare, case 1, digit left thumb, person SURG-3, first
  event: asked, case 1, who-looked
> card WHO LOOKED: PATIENT
accepted: Looked at the bare digit as well: the patient.
next: Still to do: which tourniquet it is, not listed: scan its pack; the operator's badge when it was said aloud which it is.
  event: who-looked, case 1, patient, first
  event: asked, case 1, nothing more
> badge SURG-3
accepted: Noted: the tourniquet that is not listed was named aloud. Write on the paper sheet what it is.
next: Read the sign-out points aloud: scan NEXT, then the operator's badge if all are true; NO if one is not.
  event: paid, case 1, listing, item 1, person SURG-3, named-aloud, first
> card NEXT
accepted: Next.
next: Read the sign-out points aloud: scan the operator's badge if all are true; NO if one is not.
  event: next, case 1
> badge SURG-3
accepted: Case 1 ended reconciled. Tourniquet, not listed: 1 of 1 shown intact. Seen bare: left thumb.
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
