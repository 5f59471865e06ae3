# Two tourniquets that are not listed are two debts: a badge that names one leaves the other (rule 3).
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
  event: case-opened, case 1
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2", first
> card UNLISTED TOURNIQUET
accepted: Entered: a tourniquet that is not listed. Say aloud what it is; a glove finger or a drain must not be used.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: item-in, case 1, item 1, no line "tourniquet, not listed" tourniquet unlisted, n 1, first
  event: owed, case 1, listing, item 1
> card UNLISTED TOURNIQUET
accepted: Entered: a tourniquet that is not listed. Say aloud what it is; a glove finger or a drain must not be used.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: item-in, case 1, item 2, no line "tourniquet, not listed" tourniquet unlisted, n 1, first
  event: owed, case 1, listing, item 2
> show
item 1: tourniquet, not listed, here, 0 of 1
item 2: tourniquet, not listed, here, 0 of 1
owed: listing, 2 times
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Owed: a tourniquet is not listed: scan its pack, or say aloud what it is, then the badge of the one who records.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> show
item 1: tourniquet, not listed, here, 0 of 1
item 2: tourniquet, not listed, here, 0 of 1
owed: listing, 2 times
> badge CIRC-2
accepted: Noted: the tourniquet that is not listed was named aloud. Write on the paper sheet what it is.
next: Owed: a tourniquet is not listed: scan its pack, or say aloud what it is, then the badge of the one who records.
  event: paid, case 1, listing, item 1, person CIRC-2, "named aloud, not in the catalogue", first
> show
item 1: tourniquet, not listed, here, 0 of 1
item 2: tourniquet, not listed, here, 0 of 1
owed: listing
