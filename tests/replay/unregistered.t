# One of the two must be registered (rule 8).
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 1
> badge SUPPORT-4
accepted: SUPPORT-4: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 1, field, person SUPPORT-4, "SUPPORT-4", first
> badge SUPPORT-7
refused: Neither SUPPORT-7 nor the one who is here is registered: one of the two must be. Scan a registered badge.
next: Who circulates: scan the circulating badge.
  event: refused, case 1, "Neither SUPPORT-7 nor the one who is here is registered: one of the two must be. Scan a registered badge."
> pack GREEN-M 171 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Who circulates: scan the circulating badge.
  event: item-in, case 1, item 1, GREEN-M:171 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge SUPPORT-7
refused: Neither SUPPORT-7 nor the one who is here is registered: one of the two must be. Scan a registered badge.
next: Who circulates: scan the circulating badge.
  event: refused, case 1, "Neither SUPPORT-7 nor the one who is here is registered: one of the two must be. Scan a registered badge."
> card HANDOVER
question: Handover.
next: Who hands over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-out, first
> badge SUPPORT-4
question: SUPPORT-4 hands over (at the field).
next: Who takes over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-in, person SUPPORT-4, first
> badge SCRUB-1
question: SCRUB-1 takes over from SUPPORT-4, at the field.
next: Count aloud together what is on the sheet: scan the circulating badge.
  event: left, case 1, field, person SUPPORT-4, first
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1"
  event: count-started, case 1, handover
  event: owed, case 1, handover
  event: asked, case 1, handover-agree, person SUPPORT-4, n 1
> badge SUPPORT-7
accepted: SUPPORT-7: circulating.
next: Count aloud together what is on the sheet: scan NEXT, then the circulating badge.
  event: joined, case 1, circulating, person SUPPORT-7, "SUPPORT-7", first
> card NEXT
accepted: Next.
next: Count aloud together what is on the sheet: scan the circulating badge.
  event: next, case 1
> badge SUPPORT-7
accepted: Handover count agreed aloud by SCRUB-1 and SUPPORT-7, recorded by SUPPORT-7.
next: Count in: scan each pack and instrument; NEXT, then the circulating badge when both have counted aloud.
  event: count-agreed, case 1, handover, person SCRUB-1, other SUPPORT-7, n SUPPORT-7, first
  event: paid, case 1, handover, person SUPPORT-7, agreed-aloud
  event: asked, case 1, nothing more
> card NEXT
accepted: Next.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: next, case 1
> badge SUPPORT-7
accepted: Initial count agreed aloud by SCRUB-1 and SUPPORT-7, recorded by SUPPORT-7.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other SUPPORT-7, n SUPPORT-7, first
