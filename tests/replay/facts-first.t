# A digit card before any case is open opens one, and the clock starts at once (rule 3).
> digit right little finger
accepted: Tourniquet on, right little finger, from 10:00; no forceps on it. The clock runs.
next: Scan the badge of the one at the field, before scrubbing.
> show
item 1: tourniquet, not listed yet, on, 0 of 1
right little finger: on, now 0 min, total 0 min, longest 0 min
owed: team
owed: listing
owed: count
+ 4 min
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Owed: a tourniquet is not listed: scan its pack, or say aloud what it is, then the badge of the one who records.
> pack GREEN-M 105 lot T26 expiry 20280331
accepted: Listed: the tourniquet that is on is finger tourniquet, green, M.
next: Owed: the initial count was not agreed before the tourniquet went on: agree it aloud now, then scan the circulating badge.
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is off the right little finger: scan its digit card, then OFF.
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right little finger: on, now 4 min, total 4 min, longest 4 min
> digit right little finger
question: Tourniquet on the right little finger for 4 min.
next: Right little finger: Is it off? If it is, scan OFF; NO if it is still on.
> card OFF
accepted: Off, right little finger, at 10:04, after 4 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there.
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Agree the final count aloud, then scan the circulating badge.
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right little finger before the dressing, then scan its digit card.
> digit right little finger
accepted: Right little finger seen bare at 10:04.
next: Read the sign-out points aloud. If all are so, scan the surgeon's badge; if one is not, NO.
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact; right little finger seen bare.
next: When the paper is in your hand: scan the code on the slip. Next patient: scan NEW CASE.
prints: reconciliation slip 1
