# A pack lies unused on the sheet of another room, and is in the hand here: asked, then it moves; that room is told (rules 4
# and 24).
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
> pack GREEN-M 540 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:540 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first

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
> pack GREEN-M 540 lot T26 expiry 20280331
question: Theatre 2: Finger tourniquet, green, M is on the open sheet of case 1 in Theatre 1.
next: Is that pack in your hand here, unused? Scan YES; NO if not.
  event: asked, case 2, here-now, item 1, n 1, first
> card YES
accepted: Theatre 2: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: asked, case 2, nothing more, first
  event: item-struck, case 1, item 1, n 2
  event: item-in, case 2, item 1, GREEN-M:540 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
> show
item 1: finger tourniquet, green, M, here, 0 of 1

room 1
> show
item 1: finger tourniquet, green, M, struck, 0 of 1
