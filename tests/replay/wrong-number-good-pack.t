# A pack with a wrong number in it, while a good one of the same line is counted in: what is isolated is the pack in the hand,
# and the reply says what stays in the count.
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
> pack SWAB-5 lot S1
accepted: Counted in: 5 × swab, small (lot S1).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, SWAB-5 "swab, small" other lot S1 single-use, n 5, first
> card WRONG NUMBER IN PACK
question: Wrong number in the pack.
next: Do not top it up. Which pack is it? Scan the pack; NO to leave it as it is.
  event: asked, case 1, isolate, first
> pack SWAB-5 lot S1
question: Swab, small: one is on the sheet.
next: Is the pack in your hand counted in already? Scan YES; NO if not.
  event: asked, case 1, counted-in, item 1, first
> card NO
accepted: Isolated, not in the count: swab, small. Still counted in: 5 × swab, small. Keep the whole pack in the room, tell stores.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, SWAB-5 "swab, small" other lot S1 single-use, n 1, first
  event: item-isolated, case 1, item 2
  event: asked, case 1, nothing more
> show
item 1: swab, small, here, 0 of 5
item 2: swab, small, isolated, 0 of 1
> card WRONG NUMBER IN PACK
question: Wrong number in the pack.
next: Do not top it up. Which pack is it? Scan the pack; NO to leave it as it is.
  event: asked, case 1, isolate, first
> pack SWAB-5 lot S1
question: Swab, small: one is on the sheet.
next: Is the pack in your hand counted in already? Scan YES; NO if not.
  event: asked, case 1, counted-in, item 1, first
> card YES
accepted: Isolated, not in the count: swab, small. Still counted in: nothing of it. Keep the whole pack in the room, tell stores.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-isolated, case 1, item 1, first
  event: asked, case 1, nothing more
> show
item 1: swab, small, isolated, 0 of 5
item 2: swab, small, isolated, 0 of 1
