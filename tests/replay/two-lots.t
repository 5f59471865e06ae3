# One line in two lots, no number on the item: the lot on the wrapper says which of them goes back.
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
> pack PLAIN-M lot A expiry 20280331
accepted: Counted in: 1 finger tourniquet, orange, M (lot A, expires 31 Mar 2028). It bears no number of its own: the station cannot tell it from another.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, PLAIN-M "finger tourniquet, orange, M" tourniquet lot A expiry 20280331 single-use, n 1, first
+ 10 s
> card ADD
question: Adding.
next: What is added? Scan the pack; NO to leave it as it is.
  event: asked, case 1, add, first
> pack PLAIN-M lot B expiry 20280331
accepted: Counted in: 1 finger tourniquet, orange, M (lot B, expires 31 Mar 2028). It bears no number of its own: the station cannot tell it from another.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, PLAIN-M "finger tourniquet, orange, M" tourniquet lot B expiry 20280331 single-use, n 1, first
  event: asked, case 1, nothing more
> card RETURNED UNOPENED
question: Returned unopened.
next: What goes back unopened? Scan the pack; NO to leave it as it is.
  event: asked, case 1, returned, first
> pack PLAIN-M lot B expiry 20280331
accepted: Returned unopened: finger tourniquet, orange, M. It may be used in another case.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-returned, case 1, item 2, first
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, orange, M, here, 0 of 1
item 2: finger tourniquet, orange, M, returned, 0 of 1
> card RETURNED UNOPENED
question: Returned unopened.
next: What goes back unopened? Scan the pack; NO to leave it as it is.
  event: asked, case 1, returned, first
> pack PLAIN-M lot C expiry 20280331
refused: Finger tourniquet, orange, M cannot go back unopened: it is not lying here as counted in.
next: What goes back unopened? Scan the pack; NO to leave it as it is.
  event: refused, case 1, "Finger tourniquet, orange, M cannot go back unopened: it is not lying here as counted in."
> card DROPPED
question: Dropped.
next: What was dropped? Scan its pack or its mark; NO to leave it as it is.
  event: asked, case 1, dropped, first
> pack PLAIN-M lot A expiry 20280331
accepted: Dropped: finger tourniquet, orange, M. It stays in the room and in the count.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-dropped, case 1, item 1, first
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, orange, M, here, 0 of 1, dropped
item 2: finger tourniquet, orange, M, returned, 0 of 1
