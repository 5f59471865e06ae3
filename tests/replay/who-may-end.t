# Only the surgeon ends a case unresolved (rule 16), and a badge that was withdrawn meanwhile ends nothing.
begins from searched-in-vain
withdrawn SCRUB-5
> card END UNRESOLVED
question: Each step of the search is answered.
next: The surgeon decides to end unresolved: scan the surgeon's badge; VISITOR 1 for a visitor without a badge; NO to go on.
  event: asked, case 1, surgeon-ends, first
> badge CHARGE-6
refused: Only the surgeon's badge ends a case unresolved. Scan it, or NO to go on searching.
next: The surgeon decides to end unresolved: scan the surgeon's badge; VISITOR 1 for a visitor without a badge; NO to go on.
  event: refused, case 1, "Only the surgeon's badge ends a case unresolved. Scan it, or NO to go on searching."
> badge SCRUB-1
refused: Only the surgeon's badge ends a case unresolved. Scan it, or NO to go on searching.
next: The surgeon decides to end unresolved: scan the surgeon's badge; VISITOR 1 for a visitor without a badge; NO to go on.
  event: refused, case 1, "Only the surgeon's badge ends a case unresolved. Scan it, or NO to go on searching."
> badge SCRUB-5
refused: Badge 5 was withdrawn: scan a badge that is in use.
next: The surgeon decides to end unresolved: scan the surgeon's badge; VISITOR 1 for a visitor without a badge; NO to go on.
  event: refused, case 1, "Badge 5 was withdrawn: scan a badge that is in use."
> badge SURG-3
question: SURG-3 decides to end this case unresolved.
next: Incident report: type the incident number; NOT DONE if there is no number yet.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: asked, case 1, incident, person SURG-3
> card NOT DONE
accepted: Case 1 ended UNRESOLVED; its incident number is owed. Finger tourniquet, green, M: NOT accounted for, 0 of 1 shown. Artery forceps, curved: 1 of 1, mark read.
next: Case 1: look at that patient's right thumb now: scan STEP DONE when it was seen bare; NO if a tourniquet is on it; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: asked, case 1, nothing more, first
  event: owed, case 1, incident-number
  event: signed-out, case 1, person SURG-3
  event: item-used, case 1, item 1, GREEN-M:519 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use
  event: item-used, case 1, item 2, FORCEPS:53 "artery forceps, curved" forceps known by its mark, n 1
  event: case-ended, case 1, unresolved, number-owed
  event: slip-queued, case 1, reconciliation, copy 1, n 2, "en"
prints: reconciliation slip 2
  event: owed, case 1, digit-seen-bare, digit right thumb
  event: owed, case 1, ward-told
  event: slip-state, case 1, written, copy 1, n 2
