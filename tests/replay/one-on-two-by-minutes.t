# The only band comes off the thumb and goes on the index finger: its start there is not moved to before that. Where a second one is
# on it, UNDO and the minutes before YES enter it.
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
> pack GREEN-M 101 lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:101 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 1, digit right thumb
+ 12 min
  event: alive, 12 times
> digit right thumb
question: Tourniquet on the right thumb for 12 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:12, after 12 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right thumb
> digit right index finger
question: Right index finger: the clock runs as 'on?'.
next: Right index finger: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: digit-maybe-on, case 1, digit right index finger, first
  event: owed, case 1, maybe-on, digit right index finger
  event: asked, case 1, is-on, digit right index finger, n 1
> card YES
accepted: Tourniquet on, right index finger, from 10:12; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: paid, case 1, maybe-on, digit right index finger, is-on, first
  event: digit-on, case 1, digit right index finger
  event: item-on, case 1, item 1, digit right index finger
  event: asked, case 1, nothing more
+ 2 min
  event: alive, 2 times
> card 10 MINUTES AGO
refused: 10 min earlier each tourniquet on the sheet was on another digit. If a further one is on the right index finger: UNDO, 10 MINUTES AGO, then YES. If an OFF was scanned late: write the times on the slip.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: refused, case 1, "10 min earlier each tourniquet on the sheet was on another digit. If a further one is on the right index finger: UNDO, 10 MINUTES AGO, then YES. If an OFF was scanned late: write the times on the slip"
> card 3 MINUTES AGO
refused: 3 min earlier each tourniquet on the sheet was on another digit. If a further one is on the right index finger: UNDO, 3 MINUTES AGO, then YES. If an OFF was scanned late: write the times on the slip.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: refused, case 1, "3 min earlier each tourniquet on the sheet was on another digit. If a further one is on the right index finger: UNDO, 3 MINUTES AGO, then YES. If an OFF was scanned late: write the times on the slip."
> card 2 MINUTES AGO
refused: 2 min earlier each tourniquet on the sheet was on another digit. If a further one is on the right index finger: UNDO, 2 MINUTES AGO, then YES. If an OFF was scanned late: write the times on the slip.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: refused, case 1, "2 min earlier each tourniquet on the sheet was on another digit. If a further one is on the right index finger: UNDO, 2 MINUTES AGO, then YES. If an OFF was scanned late: write the times on the slip."
> card UNDO
accepted: Taken back: what was answered for, right index finger. The record keeps both.
next: Right index finger: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: undone, case 1, ref paid 9 before, first
> card 10 MINUTES AGO
accepted: 'On?' from 10 min earlier, right index finger.
next: Right index finger: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: digit-earlier, case 1, on, digit right index finger, n 10, first
> card UNDO
accepted: Taken back: the number of minutes, right index finger. The record keeps both.
next: Right index finger: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: undone, case 1, ref digit-earlier 1 before, first
> card UNDO
refused: Nothing can be taken back now. To move an entry to the right digit scan MISREAD.
next: Right index finger: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: refused, case 1, "Nothing can be taken back now. To move an entry to the right digit scan MISREAD."
> card 10 MINUTES AGO
accepted: 'On?' from 10 min earlier, right index finger.
next: Right index finger: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: digit-earlier, case 1, on, digit right index finger, n 10, first
> card YES
accepted: Tourniquet on, right index finger, from 10:02; no forceps on it. The clock runs.
next: Still to do: which tourniquet it is, not listed: scan its pack; the circulating badge when it was said aloud which it is.
  event: paid, case 1, maybe-on, digit right index finger, is-on, first
  event: digit-on, case 1, digit right index finger
  event: item-in, case 1, item 2, no line "tourniquet, not listed yet" tourniquet unlisted, n 1
  event: owed, case 1, listing, item 2
  event: owed, case 1, added
  event: item-on, case 1, item 2, digit right index finger
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: tourniquet, not listed yet, on, 0 of 1
right thumb: off, now 12 min, total 12 min, longest 12 min
right index finger: on, now 12 min, total 12 min, longest 12 min
owed: listing
owed: added
