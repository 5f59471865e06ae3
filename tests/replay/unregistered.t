# One of the two must be registered (rule 8).
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
  event: case-opened, case 1
> badge SUPPORT-4
accepted: SUPPORT-4: at the field.
next: Scan the badge of the circulating practitioner.
  event: joined, case 1, field, person SUPPORT-4, "SUPPORT-4", first
> badge SUPPORT-7
accepted: SUPPORT-7: circulating.
next: Scan each pack and instrument as it is counted in.
  event: joined, case 1, circulating, person SUPPORT-7, "SUPPORT-7", first
> pack GREEN-M 171 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: item-in, case 1, item 1, GREEN-M:171 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge SUPPORT-7
refused: The count cannot be agreed: neither of the two is registered: one must be: change over with HANDOVER.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: refused, case 1, "The count cannot be agreed: neither of the two is registered: one must be: change over with HANDOVER."
> card HANDOVER
question: Handover.
next: Who hands over? Scan the badge of the one who leaves.
  event: asked, case 1, handover-out, first
> badge SUPPORT-4
question: SUPPORT-4 hands over (at the field).
next: Who takes over? Scan the badge of the one who comes.
  event: asked, case 1, handover-in, person SUPPORT-4, first
> badge SCRUB-1
question: SCRUB-1 takes over from SUPPORT-4, at the field.
next: Count aloud what is on the sheet. Scan the circulating badge.
  event: left, case 1, field, person SUPPORT-4, first
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1"
  event: count-started, case 1, handover
  event: asked, case 1, handover-agree, person SUPPORT-4, n 1
> badge SUPPORT-7
accepted: Handover count agreed aloud by SCRUB-1 and SUPPORT-7, recorded by SUPPORT-7.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: count-agreed, case 1, handover, person SCRUB-1, other SUPPORT-7, n SUPPORT-7, first
  event: asked, case 1, nothing more
> badge SUPPORT-7
accepted: Initial count agreed aloud by SCRUB-1 and SUPPORT-7, recorded by SUPPORT-7.
next: When the tourniquet is on: scan the digit card.
  event: count-agreed, case 1, initial, person SCRUB-1, other SUPPORT-7, n SUPPORT-7, first
