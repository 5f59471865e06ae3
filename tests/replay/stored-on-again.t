# A stored card of a digit whose tourniquet had come off. Made before that OFF it starts nothing by itself, and what is on
# again is on since that OFF at most; made after it, it is on since the card, also through a power cut (rules 3, 14).
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
> pack GREEN-M 101
accepted: Counted in: 1 finger tourniquet, green, M.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:101 "finger tourniquet, green, M" tourniquet known by its pack single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit left thumb
accepted: Tourniquet on, left thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit left thumb, first
  event: item-on, case 1, item 1, digit left thumb
+ 5 min
  event: alive, 5 times
> card OFF
accepted: Off, left thumb, at 10:05, after 5 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit left thumb, first
  event: digit-off, case 1, digit left thumb
+ 1 min
> stored 300 s: digit left thumb
question: 1 stored scan came. Left thumb: the clock runs as 'on?' from 10:05.
next: A scan was stored: left thumb (made 10:01). Made in this room, for this case? Scan YES to enter as late; NO to throw away.
  event: scan-held, digit, item 1, digit left thumb, other 1, no line, "hand-1", 300 s before, by wall clock 300 s before
  event: digit-doubted, case 1, digit left thumb, first, late, 60 s before, by wall clock 60 s before
  event: owed, case 1, maybe-on, digit left thumb, 60 s before, by wall clock 60 s before
  event: asked, case 1, stored
> card YES
accepted: 1 stored scan is entered as late.
next: Still to do, left thumb: whether a tourniquet is on: scan NEXT, then YES; NO if not.
  event: asked, case 1, nothing more, first
question: Left thumb: scanned at 10:01, before what was entered since.
next: Left thumb: Is a tourniquet on it now? Scan NEXT, then YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: asked, case 1, is-on, digit left thumb, n 1, first, late, 303 s before, by wall clock 303 s before
  event: held-scan-answered, entered, ref scan-held 6 before, 303 s before, by wall clock 303 s before
> card YES
accepted: Entered once already: YES. If it is meant again: NEXT, then this.
next: Left thumb: Is a tourniquet on it now? Scan NEXT, then YES if one went on again; NO if none is on it; MISREAD if it never came off.
+ 1 min
> show
item 1: finger tourniquet, green, M, off, 0 of 1
left thumb: off, now 2 min, total 7 min, longest 5 min
owed: maybe-on
> card OFF
refused: OFF was entered for the left thumb already: NO if none went on again; YES if one did, then its digit card and OFF.
next: Left thumb: Is a tourniquet on it now? Scan NEXT, then YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: refused, case 1, "OFF was entered for the left thumb already: NO if none went on again; YES if one did, then its digit card and OFF."
+ 10 min
> stored 120 s: digit left thumb
question: 1 stored scan came.
next: Left thumb: Is a tourniquet on it now? Scan NEXT, then YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: scan-held, digit, item 1, digit left thumb, other 1, no line, "hand-1", 120 s before, by wall clock 120 s before
+ boot 30 min
  event: started, n 2
> card YES
accepted: Entered once already: YES. If it is meant again: NEXT, then this.
next: Left thumb: Is a tourniquet on it now? Scan NEXT, then YES if one went on again; NO if none is on it; MISREAD if it never came off.
> card YES
accepted: Entered once already: YES. If it is meant again: NEXT, then this.
next: Left thumb: Is a tourniquet on it now? Scan NEXT, then YES if one went on again; NO if none is on it; MISREAD if it never came off.
+ 1 min
accepted: Reminder: tourniquet on the left thumb for at least 11 min; by wall clock 43 min.
next: Left thumb: Is a tourniquet on it now? Scan NEXT, then YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: reminded, case 1, digit left thumb, n 43
> show
item 1: finger tourniquet, green, M, off, 0 of 1
left thumb: off, now at least 11 min; by wall clock 43 min, total 16 min, longest 11 min
owed: maybe-on
