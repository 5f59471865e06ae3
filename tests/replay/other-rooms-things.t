# A pack that another open sheet has is isolated here: it stands on one sheet. Another room's digit card wakes no suspended case.
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

room 2
> card NEW CASE
accepted: Theatre 2: Case 2 opened in Theatre 2.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 2
> badge SCRUB-5
accepted: Theatre 2: SCRUB-5: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 2, field, person SCRUB-5, "SCRUB-5", first
> badge SUPPORT-4
accepted: Theatre 2: SUPPORT-4: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 2, circulating, person SUPPORT-4, "SUPPORT-4", first
> card WRONG NUMBER IN PACK
question: Theatre 2: Wrong number in the pack.
next: Do not top it up. Which pack is it? Scan the pack; NO to leave it as it is.
  event: asked, case 2, isolate, first
> pack GREEN-M 101
accepted: Theatre 2: Isolated, not in the count: finger tourniquet, green, M. Still counted in: nothing of it. Keep the whole pack in the room, tell stores.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 2, item 1, GREEN-M:101 "finger tourniquet, green, M" tourniquet known by its pack single-use, n 1, first
  event: item-struck, case 1, item 1, n 2
  event: item-isolated, case 2, item 1
  event: asked, case 2, nothing more
> show
item 1: finger tourniquet, green, M, isolated, 0 of 1

room 1
> show
item 1: finger tourniquet, green, M, struck, 0 of 1
item 2: finger tourniquet, green, M, on, 0 of 1
left thumb: on, now 0 min, total 0 min, longest 0 min
> card SUSPEND
accepted: Theatre 1: Case 1 is suspended. A TOURNIQUET IS ON: left thumb. Clocks and reminders go on.
next: Case 1 is suspended: scan NEXT, then SUSPEND to go on with it; NEW CASE for the next patient.
  event: suspended, case 1, first
> digit left thumb of room 2
refused: Theatre 1: This is a card of Theatre 2; this scanner works for Theatre 1. Nothing was entered. In Theatre 1: take that room's own card. In Theatre 2: scan THIS ROOM of Theatre 2, then this again.
next: Case 1 is suspended: scan NEXT, then SUSPEND to go on with it; NEW CASE for the next patient.
  event: refused, "This is a card of Theatre 2; this scanner works for Theatre 1. Nothing was entered. In Theatre 1: take that room's own card. In Theatre 2: scan THIS ROOM of Theatre 2, then this again."
> stored 60 s: card SUSPEND; badge SCRUB-1
question: Theatre 1: 2 stored scans came. NOT held: SUSPEND: the scans behind it would go to another case, scan it now if it is so.
next: A scan was stored: SCRUB-1 (made 09:59). Made in this room? Scan NEW CASE to open their case first; NO to throw away.
  event: refused, "A stored scan was NOT held: SUSPEND: the scans behind it would go to another case, scan it now if it is so"
  event: scan-held, badge, item 2, other 1, no line, n 1, "hand-1", 59 s before, by wall clock 59 s before
  event: asked, stored
