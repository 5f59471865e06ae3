# Two patients in one room: a room has one suspended case at most, SUSPEND changes over between the two, and each digit
# card and OFF is of the case that is open.
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
> pack GREEN-M 281 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:281 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
> card SUSPEND
accepted: Case 1 is suspended. A TOURNIQUET IS ON: right index finger. Clocks and reminders go on.
next: Case 1 is suspended: scan NEXT, then SUSPEND to go on with it; NEW CASE for the next patient.
  event: suspended, case 1, first
> card NEW CASE
accepted: Case 2 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 2
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 2, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 2, circulating, person CIRC-2, "CIRC-2", first
> pack GREEN-M 282 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 2, item 1, GREEN-M:282 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 2, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs. Case 1, suspended here, has one on the right index finger as well: if that is meant, MISREAD, then YES.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 2, digit right index finger, first
  event: item-on, case 2, item 1, digit right index finger
> card NEW CASE
refused: Case 2 is open in Theatre 1, case 1 is suspended there, and a room holds two: end one, or open the next patient's case in another room. SUSPEND changes over to case 1.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: refused, case 2, "Case 2 is open in Theatre 1, case 1 is suspended there, and a room holds two: end one, or open the next patient's case in another room. SUSPEND changes over to case 1."
> case 41
refused: Case 2 is open in Theatre 1, case 1 is suspended there, and a room holds two: end one, or open the next patient's case in another room. SUSPEND changes over to case 1.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: refused, case 2, "Case 2 is open in Theatre 1, case 1 is suspended there, and a room holds two: end one, or open the next patient's case in another room. SUSPEND changes over to case 1."
+ 2 min
  event: alive, 2 times
> card SUSPEND
accepted: Case 2 is suspended. A TOURNIQUET IS ON: right index finger. Clocks and reminders go on. Case 1 goes on.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: suspended, case 2, first
  event: resumed, case 1, first
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right index finger: on, now 2 min, total 2 min, longest 2 min
> card UNDO
refused: Nothing can be taken back now. To move an entry to the right digit scan MISREAD.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: refused, case 1, "Nothing can be taken back now. To move an entry to the right digit scan MISREAD."
> digit right index finger
question: Tourniquet on the right index finger for 2 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:03, after 2 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now 2 min, total 2 min, longest 2 min
> card NEW CASE
refused: Case 1 is open in Theatre 1, case 2 is suspended there, and a room holds two: end one, or open the next patient's case in another room. SUSPEND changes over to case 2.
next: Before the dressing: scan FINAL COUNT.
  event: refused, case 1, "Case 1 is open in Theatre 1, case 2 is suspended there, and a room holds two: end one, or open the next patient's case in another room. SUSPEND changes over to case 2."
> card NEXT
accepted: Next.
next: Before the dressing: scan FINAL COUNT.
  event: next, case 1
> card SUSPEND
accepted: Case 1 is suspended. Clocks and reminders go on. Case 2 goes on.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: suspended, case 1, first
  event: resumed, case 2, first
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right index finger: on, now 2 min, total 2 min, longest 2 min
> digit right index finger
question: Tourniquet on the right index finger for 2 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 2, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:03, after 2 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 2, item 1, digit right index finger, first
  event: asked, case 2, nothing more
  event: digit-off, case 2, digit right index finger
