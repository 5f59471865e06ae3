# The card of another finger was scanned at the look: MISREAD and the right card take that look back, and no clock moves.
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
> pack GREEN-M 201 lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:201 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1, first
> pack GREEN-M 202 lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, GREEN-M:202 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 2, digit right index finger
> digit right middle finger
accepted: Tourniquet on, right middle finger, from 10:00; no forceps on it. The clock runs.
next: On: right index finger and right middle finger. When one is off: scan its digit card, then OFF.
  event: digit-on, case 1, digit right middle finger, first
  event: item-on, case 1, item 1, digit right middle finger
+ 5 min
  event: alive, 5 times
> digit right index finger
question: Tourniquet on the right index finger for 5 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:05, after 5 min. Off is not yet accounted for.
next: When the tourniquet is off the right middle finger: scan its digit card, then OFF.
  event: item-off, case 1, item 2, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
> digit right middle finger
question: Tourniquet on the right middle finger for 5 min.
next: Right middle finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right middle finger, first
> card OFF
accepted: Off, right middle finger, at 10:05, after 5 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right middle finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right middle finger
> card FINAL COUNT
accepted: Final count, line by line.
next: Lay 2 × finger tourniquet, green, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: count-started, case 1, final, first
> card SHOWN 2
accepted: Accounted for: finger tourniquet, green, M: shown intact, 2 of 2.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
  event: item-shown, case 1, shown, item 2, intact, n 1
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right index finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Right index finger seen bare at 10:05.
next: Look at the bare right middle finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: digit-seen-bare, case 1, digit right index finger, person CIRC-2, first
> card MISREAD
question: Misread: the right index finger, or a pack.
next: Right index finger: What was misread? Scan the card of the digit that it is really on; NO to leave it as it is.
  event: asked, case 1, move-to, digit right index finger, first
> digit right middle finger
accepted: The look at the right index finger is taken back: it is looked at again. If another was looked at, scan its card.
next: Look at the bare right index finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: digit-not-seen, case 1, digit right index finger, first
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, green, M, accounted, 1 of 1
item 2: finger tourniquet, green, M, accounted, 1 of 1
right index finger: off, now 5 min, total 5 min, longest 5 min
right middle finger: off, now 5 min, total 5 min, longest 5 min
> digit right middle finger
accepted: Right middle finger seen bare at 10:06.
next: Look at the bare right index finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: digit-seen-bare, case 1, digit right middle finger, person CIRC-2, first
> digit right index finger
accepted: Right index finger seen bare at 10:06.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not; VISITOR 1 for a visitor without a badge.
  event: digit-seen-bare, case 1, digit right index finger, person CIRC-2, first
> show
item 1: finger tourniquet, green, M, accounted, 1 of 1
item 2: finger tourniquet, green, M, accounted, 1 of 1
right index finger: off, now 5 min, total 5 min, longest 5 min, seen bare
right middle finger: off, now 5 min, total 5 min, longest 5 min, seen bare


