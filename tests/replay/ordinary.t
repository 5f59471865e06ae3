# The ordinary case: one finger, tourniquet and forceps, two people (16 scans).
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
> pack GREEN-M 101 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> pack FORCEPS 7
accepted: Counted in: 1 artery forceps, curved.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card.
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
+ 32 min
accepted: Reminder: tourniquet on the right index finger for 20 min.
next: Tourniquet on the right index finger for 20 min: tell the surgeon. Scan any badge to acknowledge.
accepted: Reminder: tourniquet on the right index finger for 30 min.
next: Tourniquet on the right index finger for 30 min: tell the surgeon. Scan any badge to acknowledge.
> digit right index finger
question: Tourniquet on the right index finger for 32 min.
next: Right index finger: Is it off? If it is, scan OFF; NO if it is still on.
> card OFF
accepted: Off, right index finger, at 10:32, after 32 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there.
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Show the artery forceps, curved: scan its mark, or YES when both have seen it; NO if it is not there.
> pack FORCEPS 7
accepted: Accounted for: artery forceps, curved: its mark was read, 1 of 1.
next: Agree the final count aloud, then scan the circulating badge.
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right index finger before the dressing, then scan its digit card.
> digit right index finger
accepted: Right index finger seen bare at 10:32.
next: Read the sign-out points aloud. If all are so, scan the surgeon's badge; if one is not, NO.
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact; artery forceps, curved: 1 of 1 mark read; right index finger seen bare.
next: When the paper is in your hand: scan the code on the slip. Next patient: scan NEW CASE.
prints: reconciliation slip 1
> slip 1
accepted: Slip 0000001 of case 1, copy 1, seen: this is the paper in the notes.
next: Next patient: scan NEW CASE.
