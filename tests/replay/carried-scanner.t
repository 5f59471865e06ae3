# The scanner is carried to the other room: with a case in both, each reply names the room, and a pack that stands on the sheet
# there, unused, and is on a digit here leaves that sheet (rules 4 and 18).
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
> pack GREEN-M 516 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:516 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first

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
> pack GREEN-M 517 lot T26 expiry 20280331
accepted: Theatre 2: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 2, item 1, GREEN-M:517 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 516 lot T26 expiry 20280331
question: Theatre 2: Finger tourniquet, green, M is on the open sheet of case 1 in Theatre 1.
next: Is that pack in your hand here, unused? Scan YES; NO if not.
  event: asked, case 2, here-now, item 1, n 1, first
> card NO
accepted: Theatre 2: Left as it is.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: asked, case 2, nothing more, first

room 1
> badge CIRC-2
accepted: Theatre 1: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card THIS ROOM of room 2
accepted: This scanner now works for Theatre 2.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: scanner-room, for a while, n 2, "hand-1"

room 2
> badge SUPPORT-4
accepted: Theatre 2: Initial count agreed aloud by SCRUB-5 and SUPPORT-4, recorded by SUPPORT-4.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 2, initial, person SCRUB-5, other SUPPORT-4, n SUPPORT-4, first
> digit left thumb
accepted: Theatre 2: Tourniquet on, left thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: digit-on, case 2, digit left thumb, first
  event: item-on, case 2, item 1, digit left thumb
> digit left index finger
question: Theatre 2: Left index finger: the clock runs as 'on?'.
next: Left index finger: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: digit-maybe-on, case 2, digit left index finger, first
  event: owed, case 2, maybe-on, digit left index finger
  event: asked, case 2, is-on, digit left index finger, n 1
> card YES
accepted: Theatre 2: Tourniquet on, left index finger, from 10:00; no forceps on it. The clock runs.
next: Still to do: which tourniquet it is, not listed: scan its pack; the circulating badge when it was said aloud which it is.
  event: paid, case 2, maybe-on, digit left index finger, is-on, first
  event: digit-on, case 2, digit left index finger
  event: item-in, case 2, item 2, no line "tourniquet, not listed yet" tourniquet unlisted, n 1
  event: owed, case 2, listing, item 2
  event: owed, case 2, added
  event: item-on, case 2, item 2, digit left index finger
  event: asked, case 2, nothing more
> pack GREEN-M 516 lot T26 expiry 20280331
accepted: Theatre 2: Listed as what it is, because it is already on: finger tourniquet, green, M. But this finger tourniquet, green, M is on the open sheet of case 1 in Theatre 1: the surgeon answers for it.
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: item-listed, case 2, item 2, GREEN-M:516 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, first
  event: item-struck, case 1, item 1, n 2
  event: paid, case 2, listing, item 2, pack-scanned
  event: owed, case 2, reason, item 2, "this finger tourniquet, green, M is on the open sheet of case 1 in Theatre 1"
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: finger tourniquet, green, M, on, 0 of 1
left thumb: on, now 0 min, total 0 min, longest 0 min
left index finger: on, now 0 min, total 0 min, longest 0 min
owed: added
owed: reason

room 1
> show
item 1: finger tourniquet, green, M, struck, 0 of 1
