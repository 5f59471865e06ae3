# A single-use item is used once; an item found after the end acts on the case it came from (rules 4 and 21).
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
> pack GREEN-M 130 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card.
> digit left thumb
accepted: Tourniquet on, left thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
> digit left thumb
question: Tourniquet on the left thumb for 0 min.
next: Left thumb: Is it off? If it is, scan OFF; NO if it is still on.
> card OFF
accepted: Off, left thumb, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there.
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Agree the final count aloud, then scan the circulating badge.
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare left thumb before the dressing, then scan its digit card.
> digit left thumb
accepted: Left thumb seen bare at 10:00.
next: Read the sign-out points aloud. If all are so, scan the surgeon's badge; if one is not, NO.
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact; left thumb seen bare.
next: When the paper is in your hand: scan the code on the slip. Next patient: scan NEW CASE.
prints: reconciliation slip 1
> slip 1
accepted: Slip 0000001 of case 1, copy 1, seen: this is the paper in the notes.
next: Next patient: scan NEW CASE.
> card FOUND
question: Found after the end of a case. Scan the item, or the slip of the case that it comes from.
next: Scan the item that was found, or the slip of the case that it comes from.
> pack GREEN-M 130 lot T26 expiry 20280331
accepted: Found after the end: finger tourniquet, green, M comes from case 1, which counted it as accounted for. Look at that patient's digit now and tell the surgeon.
next: When the paper is in your hand: scan the code on the slip. Next patient: scan NEW CASE.
addendum: case 1
prints: addendum slip 2
> slip 2
accepted: Slip 0000002 of case 1, copy 1, seen: this is the paper in the notes.
next: Next patient: scan NEW CASE.
> card FOUND
question: Found after the end of a case. Scan the item, or the slip of the case that it comes from.
next: Scan the item that was found, or the slip of the case that it comes from.
> pack PLAIN-M lot P1
refused: This code does not tell which case finger tourniquet, orange, M comes from: scan FOUND, then the slip of the case you think of.
next: Next patient: scan NEW CASE.
> card FOUND
question: Found after the end of a case. Scan the item, or the slip of the case that it comes from.
next: Scan the item that was found, or the slip of the case that it comes from.
> slip 1
accepted: Found after the end: entered for case 1. Look at that patient's digit now and tell the surgeon.
next: When the paper is in your hand: scan the code on the slip. Next patient: scan NEW CASE.
addendum: case 1
prints: addendum slip 3
> card NEW CASE
accepted: Case 2 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> pack GREEN-M 130 lot T26 expiry 20280331
refused: Not counted in: this finger tourniquet, green, M was used before, in case 1, and is used once only. Take it off the field and use another. If it is already on the digit, scan UNLISTED TOURNIQUET.
next: Scan the badge of the one at the field, before scrubbing.
