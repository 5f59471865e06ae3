# One operator opens a second pack after the tourniquet went on: the operator's badge counts what was added.

room 3
> badge SURG-3
accepted: Case 1 opened in Minor injuries. SURG-3 works alone: single-person count.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: case-opened, case 1, n 1
  event: joined, case 1, field, person SURG-3, "SURG-3"
> pack GREEN-M 507 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: When the tourniquet goes on, before gloving: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: item-in, case 1, item 1, GREEN-M:507 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> digit left thumb
accepted: Tourniquet on, left thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit left thumb, first
  event: item-on, case 1, item 1, digit left thumb
  event: count-agreed, case 1, initial, person SURG-3, n SURG-3
> pack FORCEPS 52
accepted: Added: 1 artery forceps, curved.
next: Still to do: the count of what was added: scan the operator's badge when it was counted aloud.
  event: item-in, case 1, item 2, FORCEPS:52 "artery forceps, curved" forceps known by its mark, n 1, first
  event: owed, case 1, added
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: artery forceps, curved, here, 0 of 1
left thumb: on, now 0 min, total 0 min, longest 0 min
owed: added
> badge CIRC-2
refused: This count is single-person, by SURG-3. WHO LOOKED names who else looked. If CIRC-2 takes over, scan HANDOVER, then this badge.
next: Still to do: the count of what was added: scan the operator's badge when it was counted aloud.
  event: refused, case 1, "This count is single-person, by SURG-3. WHO LOOKED names who else looked. If CIRC-2 takes over, scan HANDOVER, then this badge."
> badge SURG-3
accepted: SURG-3 counted: what was added, single-person count.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: count-agreed, case 1, added, person SURG-3, n SURG-3, first
  event: paid, case 1, added, person SURG-3, by-operator
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
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Show the artery forceps, curved: scan its mark; YES when you have seen it; NO if it is not there.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> pack FORCEPS 52
accepted: Accounted for: artery forceps, curved: its mark was read, 1 of 1.
next: Look at the bare left thumb before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: item-shown, case 1, mark, item 2, n 1, first
  event: count-agreed, case 1, final, person SURG-3, n SURG-3
> digit left thumb
question: Left thumb seen bare at 10:00.
next: Who else looked at the bare digit? Scan PATIENT, CARER, COLLEAGUE or NOBODY.
  event: digit-seen-bare, case 1, digit left thumb, person SURG-3, first
  event: asked, case 1, who-looked
> card WHO LOOKED: PATIENT
accepted: Looked at the bare digit as well: the patient.
next: Read the sign-out points aloud: scan the operator's badge if all are true; NO if one is not.
  event: who-looked, case 1, patient, first
  event: asked, case 1, nothing more
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact. Artery forceps, curved: 1 of 1, mark read. Seen bare: left thumb.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: signed-out, case 1, person SURG-3, first
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, GREEN-M:507 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: item-used, case 1, item 2, FORCEPS:52 "artery forceps, curved" forceps known by its mark, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1, "en"
prints: reconciliation slip 1
  event: slip-state, case 1, written, copy 1, n 1
