# What is owed to the patient of a case that ended unresolved stays until it is entered, with no case open (rules 16, 21).
begins from unresolved
> card NEW CASE
accepted: Case 2 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 2
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 2, field, person SCRUB-1, "SCRUB-1", first
> card STEP DONE
refused: There is no search now.
next: Who circulates: scan the circulating badge.
  event: refused, case 2, "There is no search now."
> card CANCEL
question: Case 2.
next: Cancel this case? Scan YES; NO if not.
  event: asked, case 2, cancel, first
> card YES
accepted: Case 2 ended as cancelled; nothing was counted in.
next: Case 1: look at that patient's left great (big) toe now: scan STEP DONE when it was seen bare; NO if a tourniquet is on it; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: asked, case 2, nothing more, first
  event: case-ended, case 2, cancelled, nothing-opened
> card STEP DONE
accepted: Case 1: left great (big) toe seen bare, entered.
next: Case 1: tell the ward now: scan NEXT, then STEP DONE when it was done; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: paid, case 1, digit-seen-bare, digit left great (big) toe, entered-after
> card STEP DONE
accepted: Entered once already: STEP DONE. If it is meant again: NEXT, then this.
next: Case 1: tell the ward now: scan NEXT, then STEP DONE when it was done; the code on the slip when it is in your hand; NEW CASE for the next patient.
> card NEXT
accepted: Next.
next: Case 1: tell the ward now: scan STEP DONE when it was done; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: next
> card STEP DONE
accepted: Case 1: ward told, entered.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: paid, case 1, ward-told, entered-after
> card STEP DONE
accepted: Entered once already: STEP DONE. If it is meant again: NEXT, then this.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
> card FOUND
question: Found after the end of a case.
next: What was found? Scan the mark on it when what is missing is in your hand; the code on the slip of the case it comes from, if it bears no number; NO to leave it as it is.
  event: asked, found
> slip 2
accepted: Found after the end: entered for case 1. Look at that patient's digit now and tell the surgeon.
next: Case 1: call that patient back now, if not here any more: scan STEP DONE when it was done; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: asked, nothing more
  event: found-after, case 1, no line "an item without a number"
addendum: case 1
  event: slip-queued, case 1, addendum, copy 1, n 3, "en"
prints: addendum slip 3
  event: owed, case 1, patient-called-back
  event: owed, case 1, digit-seen-bare
  event: owed, case 1, ward-told
  event: slip-state, case 1, written, copy 1, n 3
> card STEP DONE
accepted: Case 1: patient called back, or still here, entered.
next: Case 1: look at that patient's digit now: scan NEXT, then STEP DONE when it was seen bare; NO if a tourniquet is on it; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: paid, case 1, patient-called-back, entered-after
> card NEW CASE
accepted: Case 3 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 3
