# The suspended patient's tourniquet is off: a digit card is of the next patient, whose case it opens.
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
> pack GREEN-M 270 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:270 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 1, digit right thumb
> digit right thumb
question: Tourniquet on the right thumb for 0 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right thumb
> card SUSPEND
accepted: Case 1 is suspended. Clocks and reminders go on.
next: Case 1 is suspended: scan NEXT, then SUSPEND to go on with it; NEW CASE for the next patient.
  event: suspended, case 1, first
> digit right thumb
question: Right thumb: the clock runs as 'on?'. Case 2 is opened. Case 1 stays suspended.
next: Right thumb: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: case-opened, case 2
  event: owed, case 2, team
  event: digit-maybe-on, case 2, digit right thumb
  event: owed, case 2, maybe-on, digit right thumb
  event: asked, case 2, is-on, digit right thumb, n 1
> card YES
accepted: Tourniquet on, right thumb, from 10:00; no forceps on it. The clock runs.
next: A tourniquet is on the right thumb. Who counts: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: paid, case 2, maybe-on, digit right thumb, is-on, first
  event: digit-on, case 2, digit right thumb
  event: item-in, case 2, item 1, no line "tourniquet, not listed yet" tourniquet unlisted, n 1
  event: owed, case 2, listing, item 1
  event: item-on, case 2, item 1, digit right thumb
  event: owed, case 2, team
  event: owed, case 2, count
  event: asked, case 2, nothing more
> show
item 1: tourniquet, not listed yet, on, 0 of 1
right thumb: on, now 0 min, total 0 min, longest 0 min
owed: team
owed: listing
owed: count
