# Who holds a place and is not here cannot scan out: who takes over scans first, and of two who count the one who stays
# says which place it is. The slip says that nobody scanned out.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 1
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1", first
> badge SUPPORT-4
accepted: SUPPORT-4: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 1, circulating, person SUPPORT-4, "SUPPORT-4", first
> pack FORCEPS 53
accepted: Counted in: 1 artery forceps, curved.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, FORCEPS:53 "artery forceps, curved" forceps known by its mark, n 1, first
> badge CIRC-2
refused: CIRC-2 is not in this team, and the place is taken: to take over scan HANDOVER, then this badge.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "CIRC-2 is not in this team, and the place is taken: to take over scan HANDOVER, then this badge."
> card HANDOVER
question: Handover.
next: Who hands over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-out, first
> badge CIRC-2
question: CIRC-2 takes over.
next: Who stays, of the two who count? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-stays, person CIRC-2, first
> badge SURG-3
refused: SURG-3 is not one of the two who count: scan the badge of the one who stays.
next: Who stays, of the two who count? Scan a badge; NO to leave it as it is.
  event: refused, case 1, "SURG-3 is not one of the two who count: scan the badge of the one who stays."
> badge SCRUB-1
question: CIRC-2 takes over from SUPPORT-4, circulating.
next: Count aloud together what is on the sheet: scan the circulating badge.
  event: left, case 1, circulating, person SUPPORT-4, n 1, first
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2"
  event: count-started, case 1, handover
  event: owed, case 1, handover
  event: asked, case 1, handover-agree, person SUPPORT-4, n 2
> badge CIRC-2
accepted: Handover count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Count in: scan each pack and instrument; NEXT, then the circulating badge when both have counted aloud.
  event: count-agreed, case 1, handover, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: paid, case 1, handover, person CIRC-2, agreed-aloud
  event: asked, case 1, nothing more
> card NEXT
accepted: Next.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: next, case 1
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> badge SURG-3
accepted: SURG-3: operating surgeon.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NO if it is not there.
  event: count-started, case 1, final, first
> pack FORCEPS 53
accepted: Accounted for: artery forceps, curved: its mark was read, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, mark, item 1, n 1, first
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> badge SURG-3
accepted: Case 1 ended reconciled. Artery forceps, curved: 1 of 1, mark read.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: signed-out, case 1, person SURG-3, first
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, FORCEPS:53 "artery forceps, curved" forceps known by its mark, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1, "en"
prints: reconciliation slip 1
  event: slip-state, case 1, written, copy 1, n 1
