# A case ended without its forceps, and the next one is counted in: what others begin from.
begins from searched-for-forceps
> card END UNRESOLVED
question: Each step of the search is answered.
next: The surgeon decides to end unresolved: scan the surgeon's badge; VISITOR 1 for a visitor without a badge; NO to go on.
  event: asked, case 1, surgeon-ends, first
> badge SURG-3
question: SURG-3 decides to end this case unresolved.
next: Incident report: type the incident number; NOT DONE if there is no number yet.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: asked, case 1, incident, person SURG-3
> card NOT DONE
accepted: Case 1 ended UNRESOLVED; its incident number is owed. Artery forceps, curved: NOT accounted for, 0 of 1 shown. Finger tourniquet, green, M: 1 of 1 shown intact.
next: Case 1: look at that patient's right thumb now: scan STEP DONE when it was seen bare; NO if a tourniquet is on it; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: asked, case 1, nothing more, first
  event: owed, case 1, incident-number
  event: signed-out, case 1, person SURG-3
  event: item-used, case 1, item 1, GREEN-M:519 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: item-used, case 1, item 2, FORCEPS:53 "artery forceps, curved" forceps known by its mark
  event: case-ended, case 1, unresolved, number-owed
  event: slip-queued, case 1, reconciliation, copy 1, n 2, "en"
prints: reconciliation slip 2
  event: owed, case 1, digit-seen-bare, digit right thumb
  event: owed, case 1, ward-told
  event: slip-state, case 1, written, copy 1, n 2
> slip 1
accepted: Slip 0000001 of case 1, copy 1, seen: this paper came out.
next: Case 1: look at that patient's right thumb now: scan STEP DONE when it was seen bare; NO if a tourniquet is on it; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: slip-state, case 1, seen, copy 1, n 1
> slip 2
accepted: Slip 0000002 of case 1, copy 1, seen: this paper came out.
next: Case 1: look at that patient's right thumb now: scan STEP DONE when it was seen bare; NO if a tourniquet is on it; NEW CASE for the next patient.
  event: slip-state, case 1, seen, copy 1, n 2
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
> pack GREEN-M 509 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 2, item 1, GREEN-M:509 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
