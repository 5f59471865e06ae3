# A reminder falls due between a scan and its UNDO: it was sounded, and its slip says so.
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
> pack GREEN-M 331 lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:331 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
+ 29 min
  event: alive, 19 times
accepted: Reminder: tourniquet on the right index finger for 20 min.
next: Tourniquet on the right index finger for 20 min. Tell the surgeon, then: scan a badge.
  event: reminded, case 1, digit right index finger, n 20
  event: alive, 9 times
+ 50 s
> card ADD
question: Adding.
next: What is added? Scan the pack; NO to leave it as it is.
  event: asked, case 1, add, first
+ 1 min
accepted: Reminder: tourniquet on the right index finger for 30 min.
next: What is added? Scan the pack; NO to leave it as it is.
  event: reminded, case 1, digit right index finger, n 30
> card UNDO
accepted: Taken back: the question. The record keeps both.
next: Tourniquet on the right index finger for 30 min. Tell the surgeon, then: scan a badge.
  event: undone, case 1, ref asked 2 before, first
+ 1 min
accepted: Reminder: tourniquet on the right index finger for 31 min.
next: Tourniquet on the right index finger for 31 min. Tell the surgeon, then: scan a badge.
  event: reminded, case 1, digit right index finger, n 31
> badge SURG-3
accepted: Reminder for the right index finger acknowledged by SURG-3.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: acknowledged, case 1, digit right index finger, person SURG-3, first
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right index finger: on, now 32 min, total 32 min, longest 32 min
