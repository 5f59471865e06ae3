# One operator, only forceps: nothing was on a digit, nobody looks at one.
room 3
> badge SURG-3
accepted: Case 1 opened in Minor injuries. SURG-3 works alone: single-person count.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: case-opened, case 1, n 1
  event: joined, case 1, field, person SURG-3, "SURG-3"
> pack FORCEPS 20
accepted: Counted in: 1 artery forceps, curved.
next: When the tourniquet goes on, before gloving: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: item-in, case 1, item 1, FORCEPS:20 "artery forceps, curved" forceps known by its mark, n 1, first
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the artery forceps, curved: scan its mark; YES when you have seen it; NO if it is not there.
  event: count-started, case 1, final, first
> pack FORCEPS 20
accepted: Accounted for: artery forceps, curved: its mark was read, 1 of 1.
next: Read the sign-out points aloud: scan the operator's badge if all are true; NO if one is not.
  event: item-shown, case 1, mark, item 1, n 1, first
  event: count-agreed, case 1, final, person SURG-3, n SURG-3
> badge SURG-3
accepted: Case 1 ended reconciled. Artery forceps, curved: 1 of 1, mark read.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: signed-out, case 1, person SURG-3, first
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, FORCEPS:20 "artery forceps, curved" forceps known by its mark, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1, "en"
prints: reconciliation slip 1
  event: slip-state, case 1, written, copy 1, n 1
