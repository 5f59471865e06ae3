# One by one by policy; a NO holds and says why; interrupted, it starts again.
policy one_by_one
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
> pack GREEN-M 173 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card.
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
> card OFF
accepted: Off, right thumb, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there.
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Agree the final count aloud, then scan the circulating badge.
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right thumb before the dressing, then scan its digit card.
> digit right thumb
accepted: Right thumb seen bare at 10:00.
next: Read the sign-out points aloud. If all are so, scan the surgeon's badge; if one is not, NO.
> badge SURG-3
question: Sign-out point 1 of 5: The name of the procedure is recorded.
next: Sign-out 1 of 5: The name of the procedure is recorded. Scan YES or NO.
> badge SURG-3
question: Sign-out point 1 of 5: The name of the procedure is recorded.
next: Sign-out 1 of 5: The name of the procedure is recorded. Scan YES or NO.
> card YES
question: Sign-out point 2 of 5: Tourniquets, forceps and all other items are accounted for, or not applicable.
next: Sign-out 2 of 5: Tourniquets, forceps and all other items are accounted for, or not applicable. Scan YES or NO.
> card INTERRUPTED
question: Sign-out point 1 of 5: The name of the procedure is recorded.
next: Sign-out 1 of 5: The name of the procedure is recorded. Scan YES or NO.
> card YES
question: Sign-out point 2 of 5: Tourniquets, forceps and all other items are accounted for, or not applicable.
next: Sign-out 2 of 5: Tourniquets, forceps and all other items are accounted for, or not applicable. Scan YES or NO.
> card YES
question: Sign-out point 3 of 5: Each specimen is labelled with the patient's name, or there is none.
next: Sign-out 3 of 5: Each specimen is labelled with the patient's name, or there is none. Scan YES or NO.
> card NO
accepted: Sign-out held at point 3: Each specimen is labelled with the patient's name, or there is none.
next: Sign-out held: point 3 is NO. Resolve it, then scan the surgeon's badge.
> badge SURG-3
question: Sign-out point 1 of 5: The name of the procedure is recorded.
next: Sign-out 1 of 5: The name of the procedure is recorded. Scan YES or NO.
> card YES
question: Sign-out point 2 of 5: Tourniquets, forceps and all other items are accounted for, or not applicable.
next: Sign-out 2 of 5: Tourniquets, forceps and all other items are accounted for, or not applicable. Scan YES or NO.
> card YES
question: Sign-out point 3 of 5: Each specimen is labelled with the patient's name, or there is none.
next: Sign-out 3 of 5: Each specimen is labelled with the patient's name, or there is none. Scan YES or NO.
> card YES
question: Sign-out point 4 of 5: Equipment problems have been reported, or there are none.
next: Sign-out 4 of 5: Equipment problems have been reported, or there are none. Scan YES or NO.
> card YES
question: Sign-out point 5 of 5: Concerns for recovery have been handed over, colour and warmth of the digit among them.
next: Sign-out 5 of 5: Concerns for recovery have been handed over, colour and warmth of the digit among them. Scan YES or NO.
> card YES
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact; right thumb seen bare.
next: When the paper is in your hand: scan the code on the slip. Next patient: scan NEW CASE.
prints: reconciliation slip 1
