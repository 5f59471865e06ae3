# What was missing when its case ended turns up: its code alone says whose it is, with no case open (rule 21). Forceps
# that come back to another patient are counted in; what is found then is of the last one.
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
> pack GREEN-M 519 lot T26 expiry 20280331
refused: That is the wrapper or bag of the finger tourniquet, green, M that case 1 did not account for: it proves only itself. Is the item itself in your hand? Then scan FOUND and the slip of case 1.
next: Case 1: look at that patient's right thumb now: scan STEP DONE when it was seen bare; NO if a tourniquet is on it; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: refused, "That is the wrapper or bag of the finger tourniquet, green, M that case 1 did not account for: it proves only itself. Is the item itself in your hand? Then scan FOUND and the slip of case 1."
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
  event: owed, case 1, ward-told
  event: slip-state, case 1, written, copy 1, n 3
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
> pack FORCEPS 53
accepted: Counted in: 1 artery forceps, curved.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 2, item 1, FORCEPS:53 "artery forceps, curved" forceps known by its mark, n 1, first
