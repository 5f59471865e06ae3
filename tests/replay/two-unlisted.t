# Two tourniquets that are not listed are two debts: a badge that names one leaves the other (rule 3).
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
> card UNLISTED TOURNIQUET
accepted: Entered: a tourniquet that is not listed. If it is on a digit, scan that digit card now.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, no line "tourniquet, not listed" tourniquet unlisted, n 1, first
  event: owed, case 1, listing, item 1
> card NEXT
accepted: Next.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: next, case 1
> card UNLISTED TOURNIQUET
accepted: Entered: a tourniquet that is not listed. If it is on a digit, scan that digit card now.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, no line "tourniquet, not listed" tourniquet unlisted, n 1, first
  event: owed, case 1, listing, item 2
> show
item 1: tourniquet, not listed, here, 0 of 1
item 2: tourniquet, not listed, here, 0 of 1
owed: listing, 2 times
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Still to do: which tourniquet it is, not listed: scan its pack; NEXT, then the circulating badge when it was said aloud which it is.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> show
item 1: tourniquet, not listed, here, 0 of 1
item 2: tourniquet, not listed, here, 0 of 1
owed: listing, 2 times
> card NEXT
accepted: Next.
next: Still to do: which tourniquet it is, not listed: scan its pack; the circulating badge when it was said aloud which it is.
  event: next, case 1
> badge CIRC-2
accepted: Noted: the tourniquet that is not listed was named aloud. Write on the paper sheet what it is.
next: Still to do: which tourniquet it is, not listed: scan its pack; NEXT, then the circulating badge when it was said aloud which it is.
  event: paid, case 1, listing, item 1, person CIRC-2, named-aloud, first
> show
item 1: tourniquet, not listed, here, 0 of 1
item 2: tourniquet, not listed, here, 0 of 1
owed: listing
