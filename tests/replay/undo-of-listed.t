# A tourniquet that is on is listed with a pack that lay on the sheet of another room, and a pack of that room is isolated: UNDO
# takes back neither without the other sheet (rules 1, 4 and 24).
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
> pack GREEN-M 571 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:571 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 572 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, GREEN-M:572 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 573 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 3, GREEN-M:573 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first

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
> digit left thumb
question: Theatre 2: Left thumb: the clock runs as 'on?'.
next: Left thumb: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: digit-maybe-on, case 2, digit left thumb, first
  event: owed, case 2, maybe-on, digit left thumb
  event: asked, case 2, is-on, digit left thumb, n 1
> card YES
accepted: Theatre 2: Tourniquet on, left thumb, from 10:00; no forceps on it. The clock runs.
next: Still to do: which tourniquet it is, not listed: scan its pack; the circulating badge when it was said aloud which it is.
  event: paid, case 2, maybe-on, digit left thumb, is-on, first
  event: digit-on, case 2, digit left thumb
  event: item-in, case 2, item 1, no line "tourniquet, not listed yet" tourniquet unlisted, n 1
  event: owed, case 2, listing, item 1
  event: item-on, case 2, item 1, digit left thumb
  event: owed, case 2, count
  event: asked, case 2, nothing more
> pack GREEN-M 571 lot T26 expiry 20280331
accepted: Theatre 2: Listed as what it is, because it is already on: finger tourniquet, green, M. But this finger tourniquet, green, M is on the open sheet of case 1 in Theatre 1: the surgeon answers for it.
next: Still to do: the initial count, not agreed before the tourniquet went on: scan the circulating badge when it was counted aloud.
  event: item-listed, case 2, item 1, GREEN-M:571 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, first
  event: item-struck, case 1, item 1, n 2
  event: paid, case 2, listing, item 1, pack-scanned
  event: owed, case 2, reason, item 1, "this finger tourniquet, green, M is on the open sheet of case 1 in Theatre 1"
> card UNDO
refused: Theatre 2: Not taken back: finger tourniquet, green, M left the sheet of case 1 in Theatre 1 for this one. If it is in Theatre 1: have it counted in there with NO CODE.
next: Still to do: the initial count, not agreed before the tourniquet went on: scan the circulating badge when it was counted aloud.
  event: refused, case 2, "Not taken back: finger tourniquet, green, M left the sheet of case 1 in Theatre 1 for this one. If it is in Theatre 1: have it counted in there with NO CODE."
> card WRONG NUMBER IN PACK
question: Theatre 2: Wrong number in the pack.
next: Do not top it up. Which pack is it? Scan the pack; NO to leave it as it is.
  event: asked, case 2, isolate, first
> pack GREEN-M 572 lot T26 expiry 20280331
accepted: Theatre 2: Isolated, not in the count: finger tourniquet, green, M. Still counted in: 1 finger tourniquet, green, M. Keep the whole pack in the room, tell stores.
next: Still to do: the initial count, not agreed before the tourniquet went on: scan the circulating badge when it was counted aloud.
  event: item-in, case 2, item 2, GREEN-M:572 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
  event: item-struck, case 1, item 2, n 2
  event: item-isolated, case 2, item 2
  event: asked, case 2, nothing more
> card UNDO
refused: Theatre 2: Not taken back: finger tourniquet, green, M left the sheet of case 1 in Theatre 1 for this one. If it is in Theatre 1: have it counted in there with NO CODE.
next: Still to do: the initial count, not agreed before the tourniquet went on: scan the circulating badge when it was counted aloud.
  event: refused, case 2, "Not taken back: finger tourniquet, green, M left the sheet of case 1 in Theatre 1 for this one. If it is in Theatre 1: have it counted in there with NO CODE."
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: finger tourniquet, green, M, isolated, 0 of 1
left thumb: on, now 0 min, total 0 min, longest 0 min
owed: count
owed: reason

room 1
> card UNDO
refused: Theatre 1: Not taken back: an item has left this sheet for case 2 in Theatre 2 since. If it is here: scan its code; if not, go on.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: refused, case 1, "Not taken back: an item has left this sheet for case 2 in Theatre 2 since. If it is here: scan its code; if not, go on."
> card NO CODE
question: Theatre 1: An item without a code.
next: Is it a finger or toe tourniquet? Scan YES; NO if not.
  event: asked, case 1, no-code, first
> card YES
accepted: Theatre 1: Counted in: tourniquet without a code. Say aloud what it is and write it on the paper sheet.
next: Still to do: which tourniquet it is, not listed: scan its pack; the circulating badge when it was said aloud which it is.
  event: asked, case 1, nothing more, first
  event: item-in, case 1, item 4, no line "tourniquet without a code" tourniquet unlisted, n 1
  event: owed, case 1, listing, item 4
  event: owed, case 1, added
> show
item 1: finger tourniquet, green, M, struck, 0 of 1
item 2: finger tourniquet, green, M, struck, 0 of 1
item 3: finger tourniquet, green, M, here, 0 of 1
item 4: tourniquet without a code, here, 0 of 1
owed: listing
owed: added
