# The place of the surgeon passes to a surgeon's badge only, that of the circulating practitioner to a practitioner's.
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
> badge SURG-3
accepted: SURG-3: operating surgeon.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
> pack GREEN-M 515 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:515 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> card HANDOVER
question: Handover.
next: Who hands over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-out, first
> badge SURG-3
question: SURG-3 hands over (operating surgeon).
next: Who takes over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-in, person SURG-3, first
> badge SUPPORT-7
refused: SUPPORT-7 cannot take this place (operating surgeon): no handover. With one who may: HANDOVER again.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "SUPPORT-7 cannot take this place (operating surgeon): no handover. With one who may: HANDOVER again."
  event: asked, case 1, nothing more
> badge CHARGE-6
accepted: CHARGE-6: nurse in charge.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: joined, case 1, charge, person CHARGE-6, "CHARGE-6", first
> card NO
refused: Nothing is asked now that NO would answer.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "Nothing is asked now that NO would answer."
> card HANDOVER
question: Handover.
next: Who hands over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-out, first
> badge CIRC-2
question: CIRC-2 hands over (circulating).
next: Who takes over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-in, person CIRC-2, first
> badge CHARGE-6
refused: CHARGE-6 is in the team already: scan the badge of the one who comes.
next: Who takes over? Scan a badge; NO to leave it as it is.
  event: refused, case 1, "CHARGE-6 is in the team already: scan the badge of the one who comes."
> badge SUPPORT-7
question: SUPPORT-7 takes over from CIRC-2, circulating.
next: Count aloud together what is on the sheet: scan NEXT, then the circulating badge.
  event: left, case 1, circulating, person CIRC-2, first
  event: joined, case 1, circulating, person SUPPORT-7, "SUPPORT-7"
  event: count-started, case 1, handover
  event: owed, case 1, handover
  event: asked, case 1, handover-agree, person CIRC-2, n 7
> card WITHOUT FULL SIGHT
refused: Each tourniquet that is on was seen already.
next: Count aloud together what is on the sheet: scan NEXT, then the circulating badge.
  event: refused, case 1, "Each tourniquet that is on was seen already."
> badge SUPPORT-7
accepted: Entered once already: SUPPORT-7. If it is meant again: NEXT, then this.
next: Count aloud together what is on the sheet: scan NEXT, then the circulating badge.
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
