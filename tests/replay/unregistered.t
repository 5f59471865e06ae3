# One of the two must be registered (rule 8).
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> badge SUPPORT-4
accepted: SUPPORT-4: at the field.
next: Scan the badge of the circulating practitioner.
> badge SUPPORT-7
accepted: SUPPORT-7: circulating.
next: Scan each pack and instrument as it is counted in.
> pack GREEN-M 171 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> badge SUPPORT-7
refused: The count cannot be agreed: neither of the two is registered: one must be: change over with HANDOVER.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> card HANDOVER
question: Handover.
next: Who hands over? Scan the badge of the one who leaves.
> badge SUPPORT-4
question: SUPPORT-4 hands over (at the field).
next: Who takes over? Scan the badge of the one who comes.
> badge SCRUB-1
question: SCRUB-1 takes over from SUPPORT-4, at the field.
next: Count aloud what is on the sheet. Scan the circulating badge.
> badge SUPPORT-7
accepted: Handover count agreed aloud by SCRUB-1 and SUPPORT-7, recorded by SUPPORT-7.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> badge SUPPORT-7
accepted: Initial count agreed aloud by SCRUB-1 and SUPPORT-7, recorded by SUPPORT-7.
next: When the tourniquet is on: scan the digit card.
