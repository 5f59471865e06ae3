# The wrapper of a band without a number, while one of its kind is on: the station does not see whether the pack in the hand is
# that one or a further one with the wrong number, and asks. What is on stays in the count.
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
> pack GREEN-M lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031). It bears no number of its own: the station cannot tell it from another.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M "finger tourniquet, green, M" tourniquet lot T26 expiry 20310331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
> card WRONG NUMBER IN PACK
question: Wrong number in the pack.
next: Do not top it up. Which pack is it? Scan the pack; NO to leave it as it is.
  event: asked, case 1, isolate, first
> pack GREEN-M lot T26 expiry 20310331
question: Finger tourniquet, green, M: one is on the sheet.
next: Is the pack in your hand counted in already? Scan YES; NO if not.
  event: asked, case 1, counted-in, item 1, first
> card YES
refused: Finger tourniquet, green, M cannot be isolated: it is not lying here as counted in.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: refused, case 1, "Finger tourniquet, green, M cannot be isolated: it is not lying here as counted in."
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right index finger: on, now 0 min, total 0 min, longest 0 min
> card WRONG NUMBER IN PACK
question: Wrong number in the pack.
next: Do not top it up. Which pack is it? Scan the pack; NO to leave it as it is.
  event: asked, case 1, isolate, first
> pack GREEN-M lot T26 expiry 20310331
question: Finger tourniquet, green, M: one is on the sheet.
next: Is the pack in your hand counted in already? Scan YES; NO if not.
  event: asked, case 1, counted-in, item 1, first
> card NO
accepted: Isolated, not in the count: finger tourniquet, green, M. Still counted in: 1 finger tourniquet, green, M. Keep the whole pack in the room, tell stores.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: item-in, case 1, item 2, GREEN-M "finger tourniquet, green, M" tourniquet lot T26 expiry 20310331 single-use, n 1, first
  event: item-isolated, case 1, item 2
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: finger tourniquet, green, M, isolated, 0 of 1
right index finger: on, now 0 min, total 0 min, longest 0 min
> digit right index finger
question: Tourniquet on the right index finger for 0 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
> card WRONG NUMBER IN PACK
question: Wrong number in the pack.
next: Do not top it up. Which pack is it? Scan the pack; NO to leave it as it is.
  event: asked, case 1, isolate, first
> pack GREEN-M lot T26 expiry 20310331
question: Finger tourniquet, green, M: one is on the sheet.
next: Is the pack in your hand counted in already? Scan YES; NO if not.
  event: asked, case 1, counted-in, item 1, first
> card YES
refused: Finger tourniquet, green, M cannot be isolated: it is not lying here as counted in.
next: Before the dressing: scan FINAL COUNT.
  event: refused, case 1, "Finger tourniquet, green, M cannot be isolated: it is not lying here as counted in."
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: finger tourniquet, green, M, isolated, 0 of 1
right index finger: off, now 0 min, total 0 min, longest 0 min
