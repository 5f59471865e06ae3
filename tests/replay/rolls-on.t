# A tourniquet that rolls on is asked about (rule 7); YES needs the surgeon's decision.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 1
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2", first
> pack ROLL-S 1 lot R1 expiry 20280331
question: Counted in: 1 finger tourniquet, roll-on, S (lot R1, expires 31 Mar 2028).
next: It rolls on. Open wound, flap, infection or tumour on the digit it is for? Scan YES; NO if not.
  event: item-in, case 1, item 1, ROLL-S:1 "finger tourniquet, roll-on, S" tourniquet known by its pack lot R1 expiry 20280331 single-use rolls-on, n 1, first
  event: owed, case 1, rolls-on, item 1
  event: asked, case 1, rolls-on, item 1
> card YES
accepted: Noted. A tourniquet that rolls on may carry infection or tumour along and tear a flap.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: asked, case 1, nothing more, first
  event: paid, case 1, rolls-on, item 1, wound
  event: owed, case 1, surgeon-decision, item 1
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Still to do: the surgeon's decision: it rolls on over an open wound, flap, infection or tumour: finger tourniquet, roll-on, S: scan the surgeon's badge; VISITOR 1 for a visitor without a badge.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> badge SURG-3
accepted: SURG-3 decides: it is used although it rolls on over an open wound, flap, infection or tumour. The slip says so.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: paid, case 1, surgeon-decision, item 1, person SURG-3, surgeon-decided
> show
item 1: finger tourniquet, roll-on, S, here, 0 of 1
> pack ROLL-S 2 lot R1 expiry 20280331
question: Added: 1 finger tourniquet, roll-on, S (lot R1, expires 31 Mar 2028).
next: It rolls on. Open wound, flap, infection or tumour on the digit it is for? Scan YES; NO if not.
  event: item-in, case 1, item 2, ROLL-S:2 "finger tourniquet, roll-on, S" tourniquet known by its pack lot R1 expiry 20280331 single-use rolls-on, n 1, first
  event: owed, case 1, added
  event: owed, case 1, rolls-on, item 2
  event: asked, case 1, rolls-on, item 2
> card NO
accepted: No open wound, flap, infection or tumour on the digit, says the team.
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: paid, case 1, rolls-on, item 2, no-wound, first
  event: asked, case 1, nothing more
