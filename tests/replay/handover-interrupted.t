# A handover with tourniquets on, and something else comes in between: each is still to be seen on its digit, or said to be
# without full sight, before the count of the handover is agreed (rule 8).
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
> pack GREEN-M 181 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:181 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 182 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, GREEN-M:182 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit left thumb
accepted: Tourniquet on, left thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit left thumb, first
  event: item-on, case 1, item 2, digit left thumb
> digit left index finger
accepted: Tourniquet on, left index finger, from 10:00; no forceps on it. The clock runs.
next: On: left thumb and left index finger. When one is off: scan its digit card, then OFF.
  event: digit-on, case 1, digit left index finger, first
  event: item-on, case 1, item 1, digit left index finger
> card HANDOVER
question: Handover.
next: Who hands over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-out, first
> badge SCRUB-1
question: SCRUB-1 hands over (at the field).
next: Who takes over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-in, person SCRUB-1, first
> badge SCRUB-5
question: SCRUB-5 takes over from SCRUB-1, at the field.
next: Left thumb: See the tourniquet on it: scan its digit card; WITHOUT FULL SIGHT if it cannot be seen.
  event: left, case 1, field, person SCRUB-1, first
  event: joined, case 1, field, person SCRUB-5, "SCRUB-5"
  event: count-started, case 1, handover
  event: owed, case 1, handover
  event: asked, case 1, handover-seen, digit left thumb, person SCRUB-1, n 5
> card ADD
question: Adding.
next: What is added? Scan the pack; NO to leave it as it is.
  event: asked, case 1, add, first
> card NO
accepted: Left as it is.
next: Left thumb: See the tourniquet on it: scan its digit card; WITHOUT FULL SIGHT if it cannot be seen.
  event: asked, case 1, nothing more, first
  event: asked, case 1, handover-seen, digit left thumb
> badge CIRC-2
refused: The badge of CIRC-2 is not asked for now.
next: Left thumb: See the tourniquet on it: scan its digit card; WITHOUT FULL SIGHT if it cannot be seen.
  event: refused, case 1, "The badge of CIRC-2 is not asked for now."
> card HANDOVER
question: Handover.
next: Who hands over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-out, first
> card NO
accepted: No handover.
next: Left thumb: See the tourniquet on it: scan its digit card; WITHOUT FULL SIGHT if it cannot be seen.
  event: asked, case 1, nothing more, first
  event: asked, case 1, handover-seen, digit left thumb
> digit left thumb
accepted: Tourniquet seen on the left thumb.
next: Left index finger: See the tourniquet on it: scan its digit card; WITHOUT FULL SIGHT if it cannot be seen.
  event: digit-seen-on, case 1, digit left thumb, n 1, first
  event: asked, case 1, handover-seen, digit left index finger
> card OFF
question: More than one digit had a tourniquet in this case.
next: Which digit is it off? Scan its digit card; NO to leave it as it is.
  event: asked, case 1, which-off, first
> digit left index finger
accepted: Off, left index finger, at 10:00, after 0 min. Off is not yet accounted for.
next: Still to do: the handover count: scan the circulating badge when it was counted aloud.
  event: item-off, case 1, item 1, digit left index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit left index finger
> card WITHOUT FULL SIGHT
refused: WITHOUT FULL SIGHT belongs to a handover.
next: Still to do: the handover count: scan the circulating badge when it was counted aloud.
  event: refused, case 1, "WITHOUT FULL SIGHT belongs to a handover."
> badge CIRC-2
accepted: Handover count agreed aloud by SCRUB-5 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: count-agreed, case 1, handover, person SCRUB-5, other CIRC-2, n CIRC-2, first
  event: paid, case 1, handover, person CIRC-2, agreed-aloud
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: finger tourniquet, green, M, on, 0 of 1
left thumb: on, now 0 min, total 0 min, longest 0 min
left index finger: off, now 0 min, total 0 min, longest 0 min
