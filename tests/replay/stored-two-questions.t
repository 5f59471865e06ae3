# Another question is open when stored scans come: NO answers that one, and throws nothing away. The stored ones are
# asked about when it is closed.
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
> digit right index finger
question: Right index finger: the clock runs as 'on?'.
next: Right index finger: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: digit-maybe-on, case 1, digit right index finger, first
  event: owed, case 1, maybe-on, digit right index finger
  event: asked, case 1, is-on, digit right index finger, n 1
> stored 640 s: pack GREEN-M 101; digit left thumb
question: 2 stored scans came. Left thumb: the clock runs as 'on?' from 09:49.
next: Right index finger: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: scan-held, thing, item 1, other 1, GREEN-M:101 "finger tourniquet, green, M" tourniquet known by its pack single-use, "hand-1", 640 s before, by wall clock 640 s before
  event: scan-held, digit, item 2, digit left thumb, other 1, no line, "hand-1", 639 s before, by wall clock 639 s before
  event: digit-maybe-on, case 1, digit left thumb, first, late, 639 s before, by wall clock 639 s before
  event: owed, case 1, maybe-on, digit left thumb, 639 s before, by wall clock 639 s before
> card NO
accepted: Marked digit: right index finger.
next: 2 scans were stored: pack finger tourniquet, green, M; left thumb (oldest 09:49). Made in this room, for this case? Scan YES to enter as late; NEXT, then NO to throw away.
  event: digit-not-on, case 1, digit right index finger, first
  event: paid, case 1, maybe-on, digit right index finger, not-on
  event: asked, case 1, nothing more
  event: digit-marked, case 1, digit right index finger
  event: asked, case 1, stored
> show
right index finger: bare, marked, now 0 min, total 0 min, longest 0 min
left thumb: maybe on, now 10 min, total 10 min, longest 10 min
owed: maybe-on
> card NEXT
accepted: Next.
next: 2 scans were stored: pack finger tourniquet, green, M; left thumb (oldest 09:49). Made in this room, for this case? Scan YES to enter as late; NO to throw away.
  event: next, case 1
> card NO
accepted: 2 stored scans were thrown away: pack finger tourniquet, green, M; left thumb. The record says so.
next: Left thumb: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: held-scan-answered, thrown away, ref scan-held 10 before, 2 times
  event: refused, case 1, "2 stored scans were thrown away"
  event: asked, case 1, nothing more
  event: asked, case 1, is-on, digit left thumb, n 1
> show
right index finger: bare, marked, now 0 min, total 0 min, longest 0 min
left thumb: maybe on, now 10 min, total 10 min, longest 10 min
owed: maybe-on
> card NEXT
accepted: Entered once already: NEXT. If it is meant again: NEXT, then this.
next: Left thumb: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
> card NO
accepted: Marked digit: left thumb.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: digit-not-on, case 1, digit left thumb, first
  event: paid, case 1, maybe-on, digit left thumb, not-on
  event: asked, case 1, nothing more
  event: digit-marked, case 1, digit left thumb
> show
right index finger: bare, marked, now 0 min, total 0 min, longest 0 min
left thumb: bare, marked, now 0 min, total 0 min, longest 0 min
