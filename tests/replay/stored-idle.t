# No case is open. A stored digit card opens one; other scans are asked about in the room, and wait for a case.
> stored 300 s: pack GREEN-M 101; badge CIRC-2
question: 2 stored scans came.
next: 2 scans were stored: pack finger tourniquet, green, M; CIRC-2 (oldest 09:55). Made in this room? Scan NEW CASE to open their case first; NO to throw away.
  event: scan-held, thing, item 1, other 1, GREEN-M:101 "finger tourniquet, green, M" tourniquet known by its pack single-use, "hand-1", 300 s before, by wall clock 300 s before
  event: scan-held, badge, item 2, other 1, no line, n 2, "hand-1", 299 s before, by wall clock 299 s before
  event: asked, stored
> card YES
refused: No case is open in Theatre 1, and the stored scans need one: scan NEW CASE, then YES. NO throws them away.
next: 2 scans were stored: pack finger tourniquet, green, M; CIRC-2 (oldest 09:55). Made in this room? Scan NEW CASE to open their case first; NO to throw away.
  event: refused, "No case is open in Theatre 1, and the stored scans need one: scan NEW CASE, then YES. NO throws them away."
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: 2 scans were stored: pack finger tourniquet, green, M; CIRC-2 (oldest 09:55). Made in this room, for this case? Scan YES to enter as late; NO to throw away.
  event: case-opened, case 1
  event: asked, case 1, stored
> card YES
accepted: 2 stored scans are entered as late.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: asked, case 1, nothing more, first
accepted: Counted in: 1 finger tourniquet, green, M.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: item-in, case 1, item 1, GREEN-M:101 "finger tourniquet, green, M" tourniquet known by its pack single-use, n 1, first, late, 309 s before, by wall clock 309 s before
  event: held-scan-answered, entered, ref scan-held 8 before, 309 s before, by wall clock 309 s before
accepted: CIRC-2: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 1, field, person CIRC-2, "CIRC-2", first, late, 308 s before, by wall clock 308 s before
  event: held-scan-answered, entered, ref scan-held 9 before, 308 s before, by wall clock 308 s before
> show
item 1: finger tourniquet, green, M, here, 0 of 1
> card CANCEL
question: Case 1. NOT ACCOUNTED FOR: finger tourniquet, green, M.
next: Cancel this case? Scan YES; NO if not.
  event: asked, case 1, cancel, first
> card YES
accepted: Case 1: the operation is cancelled. NOT ACCOUNTED FOR: finger tourniquet, green, M. A count is still owed.
next: Who circulates: scan the circulating badge.
  event: asked, case 1, nothing more, first
  event: cancelled, case 1
> card SUSPEND
accepted: Case 1 is suspended. Clocks and reminders go on.
next: Case 1 is suspended: scan NEXT, then SUSPEND to go on with it; NEW CASE for the next patient.
  event: suspended, case 1, first
> stored 60 s: card NEW CASE; badge SCRUB-1
question: 2 stored scans came.
next: 2 scans were stored: NEW CASE and SCRUB-1 (oldest 09:59). Made in this room? Scan YES to enter as late; NO to throw away.
  event: scan-held, card, item 1, other 1, no line, n 1, "hand-1", 60 s before, by wall clock 60 s before
  event: scan-held, badge, item 2, other 1, no line, n 1, "hand-1", 59 s before, by wall clock 59 s before
  event: asked, stored
> card SUSPEND
accepted: Case 1 goes on.
next: 2 scans were stored: NEW CASE and SCRUB-1 (oldest 09:59). Made in this room, for this case? Scan YES to enter as late; NO to throw away.
  event: resumed, case 1, first
  event: asked, case 1, stored
> card NEXT
accepted: Next.
next: 2 scans were stored: NEW CASE and SCRUB-1 (oldest 09:59). Made in this room, for this case? Scan YES to enter as late; NO to throw away.
  event: next, case 1
> card SUSPEND
accepted: Case 1 is suspended. Clocks and reminders go on.
next: 2 scans were stored: NEW CASE and SCRUB-1 (oldest 09:59). Made in this room? Scan YES to enter as late; NO to throw away.
  event: suspended, case 1, first
  event: asked, case 1, nothing more
  event: asked, stored
> card NO
accepted: 2 stored scans were thrown away: NEW CASE and SCRUB-1. The record says so.
next: Case 1 is suspended: scan SUSPEND to go on with it; NEW CASE for the next patient.
  event: held-scan-answered, thrown away, ref scan-held 9 before, 2 times
  event: refused, "2 stored scans were thrown away"
  event: asked, nothing more
> card SUSPEND
accepted: Case 1 goes on.
next: Who circulates: scan the circulating badge.
  event: resumed, case 1, first
> stored 600 s: digit left thumb; 120 s card OFF
question: 2 stored scans came. Left thumb: the clock runs as 'on?' from 09:50.
next: 2 scans were stored: left thumb and OFF (oldest 09:50). Made in this room, for this case? Scan YES to enter as late; NO to throw away.
  event: scan-held, digit, item 1, digit left thumb, other 1, no line, "hand-1", 600 s before, by wall clock 600 s before
  event: scan-held, card, item 2, other 1, no line, n 40, "hand-1", 120 s before, by wall clock 120 s before
  event: digit-maybe-on, case 1, digit left thumb, first, late, 600 s before, by wall clock 600 s before
  event: owed, case 1, maybe-on, digit left thumb, 600 s before, by wall clock 600 s before
  event: asked, case 1, stored
> show
item 1: finger tourniquet, green, M, here, 0 of 1
left thumb: maybe on, now 10 min, total 10 min, longest 10 min
owed: maybe-on
+ boot 30 min
  event: started, n 2
> card YES
accepted: 2 stored scans are entered as late.
next: A tourniquet is on the left thumb. Who counts: scan the circulating badge.
  event: asked, case 1, nothing more, first
question: Left thumb: the clock runs as 'on?'.
next: Left thumb: Is a tourniquet on it now? Scan NEXT, then YES; NO if none is on it: then it is the marked digit.
  event: asked, case 1, is-on, digit left thumb, n 1, first, late, 2406 s before, by wall clock 2406 s before
  event: held-scan-answered, entered, ref scan-held 8 before, 2406 s before, by wall clock 2406 s before
refused: OFF was stored before the station started again, and may have been entered meanwhile: if it was not, scan it now.
next: Left thumb: Is a tourniquet on it now? Scan NEXT, then YES; NO if none is on it: then it is the marked digit.
  event: refused, case 1, "OFF was stored before the station started again, and may have been entered meanwhile: if it was not, scan it now.", late, in boot 1, -908 s before, by wall clock 1926 s before
  event: held-scan-answered, entered, ref scan-held 9 before, in boot 1, -908 s before, by wall clock 1926 s before
> card YES
accepted: Entered once already: YES. If it is meant again: NEXT, then this.
next: Left thumb: Is a tourniquet on it now? Scan NEXT, then YES; NO if none is on it: then it is the marked digit.
> show
item 1: finger tourniquet, green, M, here, 0 of 1
left thumb: maybe on, now at least 10 min; by wall clock 40 min, total 10 min, longest 10 min
owed: maybe-on
> stored 100 s: unknown (01)00000000000000
refused: 1 stored scan came. NOT held: not in the catalogue: (01)00000000000000. Enter it from the paper sheet.
next: Left thumb: Is a tourniquet on it now? Scan NEXT, then YES; NO if none is on it: then it is the marked digit.
  event: refused, case 1, "A stored scan was NOT held: not in the catalogue: (01)00000000000000"
> card FOUND
question: Nothing is missing in this case. It may be of an earlier one.
next: What was found? Scan the mark on it when what is missing is in your hand; the code on the slip of the case it comes from, if it bears no number; NO to leave it as it is.
  event: asked, case 1, found, first
> stored 100 s: unknown (01)00000000000000; card NEW CASE
question: 2 stored scans came. NOT held: not in the catalogue: (01)00000000000000. Enter it from the paper sheet.
next: What was found? Scan the mark on it when what is missing is in your hand; the code on the slip of the case it comes from, if it bears no number; NO to leave it as it is.
  event: refused, case 1, "A stored scan was NOT held: not in the catalogue: (01)00000000000000"
  event: scan-held, card, item 2, other 1, no line, n 1, "hand-1", 99 s before, by wall clock 99 s before
> slip 1 digits 1
refused: Slip 0000001, copy 1, is not ours: its six digits are not this station's. Find out where it comes from, and put the right slip in the notes.
next: What was found? Scan the mark on it when what is missing is in your hand; the code on the slip of the case it comes from, if it bears no number; NO to leave it as it is.
  event: refused, case 1, "Slip 0000001, copy 1, is not ours: its six digits are not this station's. Find out where it comes from, and put the right slip in the notes."
> card NEW CASE
refused: Case 1 is open in Theatre 1: end it, or scan SUSPEND or CANCEL.
next: What was found? Scan the mark on it when what is missing is in your hand; the code on the slip of the case it comes from, if it bears no number; NO to leave it as it is.
  event: refused, case 1, "Case 1 is open in Theatre 1: end it, or scan SUSPEND or CANCEL."
> card NO
accepted: Left as it is.
next: A scan was stored: NEW CASE (made 10:29). Made in this room, for this case? Scan YES to enter as late; NEXT, then NO to throw away.
  event: asked, case 1, nothing more, first
  event: asked, case 1, stored
