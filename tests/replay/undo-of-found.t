# FOUND acted on a case that has ended, with the wrong slip: UNDO takes none of it back and says so, in the next case and with no
# case open (rules 13, 15 and 21).
begins from searched-in-vain
> card END UNRESOLVED
question: Each step of the search is answered.
next: The surgeon decides to end unresolved: scan the surgeon's badge; VISITOR 1 for a visitor without a badge; NO to go on.
  event: asked, case 1, surgeon-ends, first
> badge SURG-3
question: SURG-3 decides to end this case unresolved.
next: Incident report: type the incident number; NOT DONE if there is no number yet.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: asked, case 1, incident, person SURG-3
> typed INC-25
accepted: Case 1 ended UNRESOLVED, incident number INC-25. Finger tourniquet, green, M: NOT accounted for, 0 of 1 shown. Artery forceps, curved: 1 of 1, mark read.
next: Case 1: look at that patient's right thumb now: scan STEP DONE when it was seen bare; NO if a tourniquet is on it; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: asked, case 1, nothing more, first
  event: owed, case 1, incident-number
  event: paid, case 1, incident-number, "INC-25"
  event: signed-out, case 1, person SURG-3
  event: item-used, case 1, item 1, GREEN-M:519 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use
  event: item-used, case 1, item 2, FORCEPS:53 "artery forceps, curved" forceps known by its mark, n 1
  event: case-ended, case 1, unresolved, "INC-25"
  event: slip-queued, case 1, reconciliation, copy 1, n 2, "en"
prints: reconciliation slip 2
  event: owed, case 1, digit-seen-bare, digit right thumb
  event: owed, case 1, ward-told
  event: slip-state, case 1, written, copy 1, n 2
> card NEW CASE
accepted: Case 2 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 2
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 2, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 2, circulating, person CIRC-2, "CIRC-2", first
> card FOUND
question: Nothing is missing in this case. It may be of an earlier one.
next: What was found? Scan the mark on it when what is missing is in your hand; the code on the slip of the case it comes from, if it bears no number; NO to leave it as it is.
  event: asked, case 2, found, first
> slip 2
accepted: Found after the end: entered for case 1. Look at that patient's digit now and tell the surgeon.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: asked, case 2, nothing more, first
  event: found-after, case 1, no line "an item without a number"
addendum: case 1
  event: slip-queued, case 1, addendum, copy 1, n 3, "en"
prints: addendum slip 3
  event: owed, case 1, patient-called-back
  event: owed, case 1, ward-told
  event: slip-state, case 1, written, copy 1, n 3
> card UNDO
refused: Not taken back: what was found stands for case 1; look at that patient's digit all the same. If it comes from another case: scan FOUND, then that case's slip.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: refused, case 2, "Not taken back: what was found stands for case 1; look at that patient's digit all the same. If it comes from another case: scan FOUND, then that case's slip."
> card CANCEL
question: Case 2.
next: Cancel this case? Scan YES; NO if not.
  event: asked, case 2, cancel, first
> card YES
accepted: Case 2 ended as cancelled; nothing was counted in.
next: Case 1: call that patient back now, if not here any more: scan STEP DONE when it was done; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: asked, case 2, nothing more, first
  event: case-ended, case 2, cancelled, nothing-opened
> card UNDO
refused: No case is open in Theatre 1, and what the patient of case 1 is owed stands until it is done. If something that was found comes from another case: scan FOUND, then that case's slip.
next: Case 1: call that patient back now, if not here any more: scan STEP DONE when it was done; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: refused, "No case is open in Theatre 1, and what the patient of case 1 is owed stands until it is done. If something that was found comes from another case: scan FOUND, then that case's slip."
> card STEP DONE
accepted: Case 1: patient called back, or still here, entered.
next: Case 1: look at that patient's right thumb now: scan NEXT, then STEP DONE when it was seen bare; NO if a tourniquet is on it; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: paid, case 1, patient-called-back, entered-after
> card NEXT
accepted: Next.
next: Case 1: look at that patient's right thumb now: scan STEP DONE when it was seen bare; NO if a tourniquet is on it; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: next
> card STEP DONE
accepted: Case 1: right thumb seen bare, entered.
next: Case 1: tell the ward now: scan NEXT, then STEP DONE when it was done; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: paid, case 1, digit-seen-bare, digit right thumb, entered-after
> card NEXT
accepted: Next.
next: Case 1: tell the ward now: scan STEP DONE when it was done; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: next
> card STEP DONE
accepted: Case 1: ward told, entered.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: paid, case 1, ward-told, entered-after
> card NEXT
accepted: Next.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: next
> card STEP DONE
refused: No case is open in Theatre 1: STEP DONE has nothing to act on.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: refused, "No case is open in Theatre 1: STEP DONE has nothing to act on."
> card UNDO
refused: No case is open in Theatre 1: UNDO has nothing to act on.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: refused, "No case is open in Theatre 1: UNDO has nothing to act on."
