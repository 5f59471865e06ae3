# Packs that bear no number: two reads within a short time are one; a further pack needs ADD (section 4).
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
> pack PLAIN-M lot P1 expiry 20280331
accepted: Counted in: 1 finger tourniquet, orange, M (lot P1, expires 31 Mar 2028). It bears no number of its own: the station cannot tell it from another.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, PLAIN-M "finger tourniquet, orange, M" tourniquet lot P1 expiry 20280331 single-use, n 1, first
>> pack PLAIN-M lot P1 expiry 20280331
accepted: Read twice, entered once: finger tourniquet, orange, M.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
+ 10 s
> pack PLAIN-M lot P1 expiry 20280331
refused: Finger tourniquet, orange, M is already on the sheet and bears no number: for a further pack scan ADD first.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "Finger tourniquet, orange, M is already on the sheet and bears no number: for a further pack scan ADD first."
> card ADD
question: Adding.
next: What is added? Scan the pack; NO to leave it as it is.
  event: asked, case 1, add, first
> pack PLAIN-M lot P1 expiry 20280331
accepted: Counted in: 1 finger tourniquet, orange, M (lot P1, expires 31 Mar 2028). It bears no number of its own: the station cannot tell it from another.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, PLAIN-M "finger tourniquet, orange, M" tourniquet lot P1 expiry 20280331 single-use, n 1, first
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, orange, M, here, 0 of 1
item 2: finger tourniquet, orange, M, here, 0 of 1
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 2, digit right thumb
> digit right thumb
question: Tourniquet on the right thumb for 0 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card ADD
accepted: A second tourniquet on the right thumb. The clock runs until the last is off; for each scan the digit card, then OFF. If none went on: UNDO.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: item-on, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, orange, M, on, 0 of 1
item 2: finger tourniquet, orange, M, on, 0 of 1
right thumb: on, now 0 min, total 0 min, longest 0 min
> digit right thumb
question: Tourniquet on the right thumb for 0 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: One of the tourniquets is off the right thumb. Another is still on; the clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: item-off, case 1, item 2, digit right thumb, first
  event: asked, case 1, nothing more
+ 1 min
  event: alive
> digit right thumb
question: Tourniquet on the right thumb for 1 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:02, after 1 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right thumb
> card FINAL COUNT
accepted: Final count, line by line.
next: Lay 2 × finger tourniquet, orange, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: count-started, case 1, final, first
> pack PLAIN-M lot P1 expiry 20280331
refused: That is the wrapper: it proves that a pack was opened, not where the finger tourniquet, orange, M is. Show the item itself.
next: Lay 2 × finger tourniquet, orange, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: refused, case 1, "That is the wrapper: it proves that a pack was opened, not where the finger tourniquet, orange, M is. Show the item itself."
> card SHOWN 2
accepted: Accounted for: finger tourniquet, orange, M: shown intact, 2 of 2.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
  event: item-shown, case 1, shown, item 2, intact, n 1
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right thumb before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
