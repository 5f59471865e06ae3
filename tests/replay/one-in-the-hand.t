# Of two packs without a number the one that lies here goes back, and not the one that is on; of two with numbers the wrong one in the hand is put aside.
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
> card ADD
question: Adding.
next: What is added? Scan the pack; NO to leave it as it is.
  event: asked, case 1, add, first
> pack PLAIN-M lot P1 expiry 20280331
accepted: Counted in: 1 finger tourniquet, orange, M (lot P1, expires 31 Mar 2028). It bears no number of its own: the station cannot tell it from another.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, PLAIN-M "finger tourniquet, orange, M" tourniquet lot P1 expiry 20280331 single-use, n 1, first
  event: asked, case 1, nothing more
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 2, digit right index finger
> card RETURNED UNOPENED
question: Returned unopened.
next: What goes back unopened? Scan the pack; NO to leave it as it is.
  event: asked, case 1, returned, first
> pack PLAIN-M lot P1 expiry 20280331
accepted: Returned unopened: finger tourniquet, orange, M. It may be used in another case.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: item-returned, case 1, item 1, first
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, orange, M, returned, 0 of 1
item 2: finger tourniquet, orange, M, on, 0 of 1
right index finger: on, now 0 min, total 0 min, longest 0 min
> card ADD
question: Adding.
next: What is added? Scan the pack; NO to leave it as it is.
  event: asked, case 1, add, first
> pack GREEN-M 871 lot T26 expiry 20280331
accepted: Added: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: item-in, case 1, item 3, GREEN-M:871 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
  event: owed, case 1, added
  event: asked, case 1, nothing more
> pack GREEN-M 872 lot T26 expiry 20280331
accepted: Added: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: item-in, case 1, item 4, GREEN-M:872 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
  event: owed, case 1, added
> badge CIRC-2
accepted: What was added agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: count-agreed, case 1, added, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: paid, case 1, added, person CIRC-2, agreed-aloud
> digit right ring finger
accepted: Tourniquet on, right ring finger, from 10:00; no forceps on it. The clock runs.
next: On: right index finger and right ring finger. When one is off: scan its digit card, then OFF.
  event: digit-on, case 1, digit right ring finger, first
  event: item-on, case 1, item 4, digit right ring finger
> card WRONG NUMBER IN PACK
question: Wrong number in the pack.
next: Do not top it up. Which pack is it? Scan the pack; NO to leave it as it is.
  event: asked, case 1, isolate, first
> pack GREEN-M 872 lot T26 expiry 20280331
accepted: Isolated, not in the count: finger tourniquet, green, M. Still counted in: 1 finger tourniquet, green, M. Keep the whole pack in the room, tell stores. If a piece of it is in use: UNDO, it stays in the count. Count aloud anew what is left. So the other pack of the kind was opened and used: the sheet says so now.
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: item-listed, case 1, item 3, GREEN-M:872 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, first
  event: item-listed, case 1, item 4, GREEN-M:871 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use
  event: item-isolated, case 1, item 3
  event: owed, case 1, added
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, orange, M, returned, 0 of 1
item 2: finger tourniquet, orange, M, on, 0 of 1
item 3: finger tourniquet, green, M, isolated, 0 of 1
item 4: finger tourniquet, green, M, on, 0 of 1
right index finger: on, now 0 min, total 0 min, longest 0 min
right ring finger: on, now 0 min, total 0 min, longest 0 min
owed: added
