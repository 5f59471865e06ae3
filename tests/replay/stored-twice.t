# The same code twice in a row is asked about before anything is entered: once more only where that was meant.
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
> pack GREEN-M 102
accepted: Counted in: 1 finger tourniquet, green, M.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, GREEN-M:102 "finger tourniquet, green, M" tourniquet known by its pack single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit left thumb
accepted: Tourniquet on, left thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit left thumb, first
  event: item-on, case 1, item 2, digit left thumb
> digit left thumb
question: Tourniquet on the left thumb for 0 min.
next: Left thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit left thumb, first
> card ADD
accepted: A second tourniquet on the left thumb. The clock runs until the last is off; for each scan the digit card, then OFF. If none went on: UNDO.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: item-on, case 1, item 1, digit left thumb, first
  event: asked, case 1, nothing more
> stored 200 s: card OFF; card OFF; 100 s card AWAKE PATIENT; card AWAKE PATIENT; card AWAKE PATIENT
question: 5 stored scans came.
next: 5 scans were stored: OFF, OFF, AWAKE PATIENT, AWAKE PATIENT and AWAKE PATIENT (oldest 09:57). Made in this room, for this case? Scan YES to enter as late; NO to throw away.
  event: scan-held, card, item 1, other 1, no line, n 40, "hand-1", 200 s before, by wall clock 200 s before
  event: scan-held, card, item 2, other 1, no line, n 40, "hand-1", 199 s before, by wall clock 199 s before
  event: scan-held, card, item 3, other 1, no line, n 70, "hand-1", 100 s before, by wall clock 100 s before
  event: scan-held, card, item 4, other 1, no line, n 70, "hand-1", 99 s before, by wall clock 99 s before
  event: scan-held, card, item 5, other 1, no line, n 70, "hand-1", 98 s before, by wall clock 98 s before
  event: asked, case 1, stored, first
> card YES
question: Not entered yet.
next: OFF came twice in a row. Meant twice? Scan NEXT, then YES; NO for once.
  event: asked, case 1, twice, first
> card NEXT
accepted: Next.
next: OFF came twice in a row. Meant twice? Scan YES; NO for once.
  event: next, case 1
> card YES
question: Not entered yet.
next: AWAKE PATIENT came 3 times in a row. Meant 3 times? Scan NEXT, then YES; NO for once.
  event: held-scan-answered, meant, ref scan-held 7 before
  event: asked, case 1, twice, first
> card NO
accepted: 3 stored scans are entered as late.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: held-scan-answered, thrown away, ref scan-held 7 before, 2 times
  event: asked, case 1, nothing more, first
refused: OFF was scanned at 09:57, before the tourniquet on the left thumb went on: its clock runs on. If it is off, scan OFF now.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: refused, case 1, "OFF was scanned at 09:57, before the tourniquet on the left thumb went on: its clock runs on. If it is off, scan OFF now.", late, 212 s before, by wall clock 212 s before
  event: held-scan-answered, entered, ref scan-held 14 before, 212 s before, by wall clock 212 s before
refused: OFF was scanned at 09:57, before the tourniquet on the left thumb went on: its clock runs on. If it is off, scan OFF now.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: refused, case 1, "OFF was scanned at 09:57, before the tourniquet on the left thumb went on: its clock runs on. If it is off, scan OFF now.", late, 211 s before, by wall clock 211 s before
  event: held-scan-answered, entered, ref scan-held 15 before, 211 s before, by wall clock 211 s before
accepted: The patient is awake: quiet sounds, plain words.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: awake-patient, case 1, n 1, first, late, 112 s before, by wall clock 112 s before
  event: held-scan-answered, entered, ref scan-held 16 before, 112 s before, by wall clock 112 s before
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: finger tourniquet, green, M, on, 0 of 1
left thumb: on, now 0 min, total 0 min, longest 0 min
> digit right index finger
question: Right index finger: the clock runs as 'on?'.
next: Right index finger: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: digit-maybe-on, case 1, digit right index finger, first
  event: owed, case 1, maybe-on, digit right index finger
  event: asked, case 1, is-on, digit right index finger, n 1
> card YES
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: Still to do: which tourniquet it is, not listed: scan its pack; the circulating badge when it was said aloud which it is.
  event: paid, case 1, maybe-on, digit right index finger, is-on, first
  event: digit-on, case 1, digit right index finger
  event: item-in, case 1, item 3, no line "tourniquet, not listed yet" tourniquet unlisted, n 1
  event: owed, case 1, listing, item 3
  event: owed, case 1, added
  event: item-on, case 1, item 3, digit right index finger
  event: asked, case 1, nothing more
> stored 500 s: card OFF
question: 1 stored scan came.
next: A scan was stored: OFF (made 09:52). Made in this room, for this case? Scan YES to enter as late; NO to throw away.
  event: scan-held, card, item 1, other 1, no line, n 40, "hand-1", 500 s before, by wall clock 500 s before
  event: asked, case 1, stored, first
> card NEXT
accepted: Next.
next: A scan was stored: OFF (made 09:52). Made in this room, for this case? Scan YES to enter as late; NO to throw away.
  event: next, case 1
> card YES
accepted: 1 stored scan is entered as late.
next: Still to do: which tourniquet it is, not listed: scan its pack; the circulating badge when it was said aloud which it is.
  event: asked, case 1, nothing more, first
question: More than one digit had a tourniquet in this case.
next: Which digit is it off? Scan its digit card; NO to leave it as it is.
  event: asked, case 1, which-off, n 1, first, late, 506 s before, by wall clock 506 s before
  event: held-scan-answered, entered, ref scan-held 5 before, 506 s before, by wall clock 506 s before
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: finger tourniquet, green, M, on, 0 of 1
item 3: tourniquet, not listed yet, on, 0 of 1
left thumb: on, now 0 min, total 0 min, longest 0 min
right index finger: on, now 0 min, total 0 min, longest 0 min
owed: listing
owed: added
> stored 90 s: card ADD; card DROPPED; card ADD; card DROPPED; card ADD; card DROPPED; card ADD; card DROPPED; card ADD; card DROPPED; card ADD; card DROPPED; card ADD; card DROPPED; card ADD; card DROPPED; card ADD; card DROPPED; card ADD; card DROPPED; card ADD; card DROPPED; card ADD; card DROPPED; card OFF; digit left index finger
question: 26 stored scans came. 2 NOT held, the first: OFF: too many wait for an answer. Enter them from the paper sheet. Left index finger: the clock runs as 'on?' from 09:59.
next: Which digit is it off? Scan its digit card; NO to leave it as it is.
  event: scan-held, card, item 1, other 1, no line, n 20, "hand-1", 90 s before, by wall clock 90 s before
  event: scan-held, card, item 2, other 1, no line, n 26, "hand-1", 89 s before, by wall clock 89 s before
  event: scan-held, card, item 3, other 1, no line, n 20, "hand-1", 88 s before, by wall clock 88 s before
  event: scan-held, card, item 4, other 1, no line, n 26, "hand-1", 87 s before, by wall clock 87 s before
  event: scan-held, card, item 5, other 1, no line, n 20, "hand-1", 86 s before, by wall clock 86 s before
  event: scan-held, card, item 6, other 1, no line, n 26, "hand-1", 85 s before, by wall clock 85 s before
  event: scan-held, card, item 7, other 1, no line, n 20, "hand-1", 84 s before, by wall clock 84 s before
  event: scan-held, card, item 8, other 1, no line, n 26, "hand-1", 83 s before, by wall clock 83 s before
  event: scan-held, card, item 9, other 1, no line, n 20, "hand-1", 82 s before, by wall clock 82 s before
  event: scan-held, card, item 10, other 1, no line, n 26, "hand-1", 81 s before, by wall clock 81 s before
  event: scan-held, card, item 11, other 1, no line, n 20, "hand-1", 80 s before, by wall clock 80 s before
  event: scan-held, card, item 12, other 1, no line, n 26, "hand-1", 79 s before, by wall clock 79 s before
  event: scan-held, card, item 13, other 1, no line, n 20, "hand-1", 78 s before, by wall clock 78 s before
  event: scan-held, card, item 14, other 1, no line, n 26, "hand-1", 77 s before, by wall clock 77 s before
  event: scan-held, card, item 15, other 1, no line, n 20, "hand-1", 76 s before, by wall clock 76 s before
  event: scan-held, card, item 16, other 1, no line, n 26, "hand-1", 75 s before, by wall clock 75 s before
  event: scan-held, card, item 17, other 1, no line, n 20, "hand-1", 74 s before, by wall clock 74 s before
  event: scan-held, card, item 18, other 1, no line, n 26, "hand-1", 73 s before, by wall clock 73 s before
  event: scan-held, card, item 19, other 1, no line, n 20, "hand-1", 72 s before, by wall clock 72 s before
  event: scan-held, card, item 20, other 1, no line, n 26, "hand-1", 71 s before, by wall clock 71 s before
  event: scan-held, card, item 21, other 1, no line, n 20, "hand-1", 70 s before, by wall clock 70 s before
  event: scan-held, card, item 22, other 1, no line, n 26, "hand-1", 69 s before, by wall clock 69 s before
  event: scan-held, card, item 23, other 1, no line, n 20, "hand-1", 68 s before, by wall clock 68 s before
  event: scan-held, card, item 24, other 1, no line, n 26, "hand-1", 67 s before, by wall clock 67 s before
  event: refused, case 1, "A stored scan was NOT held: OFF: too many wait for an answer"
  event: refused, case 1, "A stored scan was NOT held: left index finger: too many wait for an answer"
  event: digit-maybe-on, case 1, digit left index finger, first, late, 65 s before, by wall clock 65 s before
  event: owed, case 1, maybe-on, digit left index finger, 65 s before, by wall clock 65 s before
> card NO
accepted: Left as it is.
next: 24 scans were stored: ADD, DROPPED, ADD, DROPPED, ADD and 19 further (oldest 09:59). Made in this room, for this case? Scan YES to enter as late; NEXT, then NO to throw away.
  event: asked, case 1, nothing more, first
  event: asked, case 1, stored
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: finger tourniquet, green, M, on, 0 of 1
item 3: tourniquet, not listed yet, on, 0 of 1
left thumb: on, now 0 min, total 0 min, longest 0 min
right index finger: on, now 0 min, total 0 min, longest 0 min
left index finger: maybe on, now 1 min, total 1 min, longest 1 min
owed: listing
owed: added
owed: maybe-on
