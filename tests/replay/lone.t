# One operator without a scrub nurse: ten scans.
room 3
> badge SURG-3
accepted: Case 1 opened in Minor injuries. SURG-3 works alone: single-person count.
next: Scan the tourniquet pack, and each instrument.
> pack GREEN-M 201 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: When the tourniquet goes on: scan the digit card, then glove.
> digit left thumb
accepted: Tourniquet on, left thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
+ 14 min
> digit left thumb
question: Tourniquet on the left thumb for 14 min.
next: Left thumb: Is it off? If it is, scan OFF; NO if it is still on.
> card OFF
accepted: Off, left thumb, at 10:14, after 14 min. Off is not yet accounted for.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there.
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Look at the bare left thumb before the dressing, then scan its digit card.
> digit left thumb
question: Left thumb seen bare at 10:14.
next: Who else looked at the bare digit? Scan PATIENT, CARER, COLLEAGUE or NOBODY.
> card WHO LOOKED: PATIENT
accepted: Looked at the bare digit as well: the patient.
next: Read the sign-out points aloud. If all are so, scan the operator's badge; if one is not, NO.
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact; left thumb seen bare.
next: When the paper is in your hand: scan the code on the slip. Next patient: scan NEW CASE.
prints: reconciliation slip 1
> slip 1
accepted: Slip 0000001 of case 1, copy 1, seen: this is the paper in the notes.
next: Next patient: scan NEW CASE.
