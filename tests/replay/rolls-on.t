# A tourniquet that rolls on is asked about (rule 7); YES needs the surgeon's decision.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
> pack ROLL-S 1 lot R1 expiry 20280331
question: Counted in: 1 finger tourniquet, roll-on, S (lot R1, expires 2028-03-31). It rolls on.
next: Open wound, flap, infection or tumour on this digit? Scan YES or NO.
> card YES
accepted: Noted. A tourniquet that rolls on may carry infection or tumour along and tear a flap.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Owed: it rolls on over an open wound, flap, infection or tumour: the surgeon's badge decides.
> badge SURG-3
accepted: SURG-3 decides: it is used although it rolls on over an open wound, flap, infection or tumour. The slip says so.
next: When the tourniquet is on: scan the digit card.
> show
item 1: finger tourniquet, roll-on, S, here, 0 of 1
> pack ROLL-S 2 lot R1 expiry 20280331
question: Added: 1 finger tourniquet, roll-on, S (lot R1, expires 2028-03-31). It rolls on.
next: Open wound, flap, infection or tumour on this digit? Scan YES or NO.
> card NO
accepted: No open wound, flap, infection or tumour on this digit, says the team.
next: Owed: what was added: count it aloud together, then scan the circulating badge.
