# The incident number that was owed is typed before the next case (rule 16).
begins from unresolved
> typed INC-2026-0042
accepted: Incident number of case 1 entered.
next: Case 1: look at that patient's left great (big) toe now: scan STEP DONE when it was seen bare; NO if a tourniquet is on it; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: paid, case 1, incident-number, "INC-2026-0042"
  event: slip-queued, case 1, addendum, copy 1, n 3, "en"
prints: addendum slip 3
  event: slip-state, case 1, written, copy 1, n 3
> card NEW CASE
accepted: Case 2 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 2
