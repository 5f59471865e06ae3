# Which copy of a slip came back is recorded as it was read. A case whose pack went back unopened says so at its end.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
  event: case-opened, case 1
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2", first
> pack GREEN-M 400 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: item-in, case 1, item 1, GREEN-M:400 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack PLAIN-M lot A expiry 20280331
accepted: Counted in: 1 finger tourniquet, orange, M (lot A, expires 2028-03-31). It bears no number of its own: the station cannot tell it from another.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: item-in, case 1, item 2, PLAIN-M "finger tourniquet, orange, M" tourniquet lot A expiry 20280331 single-use, n 1, first
> card RETURNED UNOPENED
question: Returned unopened.
next: Scan the pack that goes back unopened.
  event: asked, case 1, returned, first
> pack PLAIN-M lot A expiry 20280331
accepted: Returned unopened: finger tourniquet, orange, M. It may be used in another case.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: item-returned, case 1, item 2, first
  event: asked, case 1, nothing more
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there.
  event: count-started, case 1, final, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Agree the final count aloud, then scan the circulating badge.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Read the sign-out points aloud. If all are so, scan the surgeon's badge; if one is not, NO.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact; finger tourniquet, orange, M: 1 of 1 returned unopened.
next: When the paper is in your hand: scan the code on the slip. Next patient: scan NEW CASE.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: signed-out, case 1, person SURG-3
  event: item-used, case 1, item 1, GREEN-M:400 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1
prints: reconciliation slip 1
> slip 1 copy 2
accepted: Slip 0000001 of case 1, copy 2, seen: this is the paper in the notes.
next: Next patient: scan NEW CASE.
  event: slip-state, case 1, seen, copy 2, n 1
