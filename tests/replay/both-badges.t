# A policy can ask for both badges.
policy both_badges
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
> pack GREEN-M 172 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:172 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge SCRUB-1
refused: SCRUB-1 is at the field: the circulating badge records a count.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "SCRUB-1 is at the field: the circulating badge records a count."
> badge CIRC-2
question: Initial count: circulating badge read.
next: Both badges are needed here: scan the badge of the one at the field; NO to leave it as it is.
  event: asked, case 1, field-too, person CIRC-2, n 1, first
> card NEXT
accepted: Next.
next: Both badges are needed here: scan the badge of the one at the field; NO to leave it as it is.
  event: next, case 1
> badge CIRC-2
refused: Both badges are needed: scan the badge of the one at the field.
next: Both badges are needed here: scan the badge of the one at the field; NO to leave it as it is.
  event: refused, case 1, "Both badges are needed: scan the badge of the one at the field."
> badge SCRUB-1
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: asked, case 1, nothing more
